import { defineConfig } from 'vitest/config';

/** Two speeds: pure tests of analysis, scripts and figures, and tests of one built site in browsers. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'pure',
          // Reading the modules again for each of 200 files took longer than their tests; none keeps anything that another would see.
          isolate: false,
          maxWorkers: '100%',
          include: ['tests/{analysis,scripts,components,reference,faults}/**/*.test.ts'],
          // Generous, because a test that compiles a lineage shares two cores with the others.
          testTimeout: 60_000,
          hookTimeout: 120_000,
          benchmark: { include: ['tests/bench/**/*.bench.ts'] },
        },
      },
      {
        test: {
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/site/setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
