import { defineConfig } from 'vitest/config';

/** Tests that build a site of their own, or serve one that is being written. The framework keeps one place for what it generates. */
const ownSites = 'tests/site/{everyone-arabic,everyone-hard,live-reload,trait-step,whole-dist}.test.ts';

/** Browser tests wait long beside others; that what they wait for comes is the claim. */
const patience = { testTimeout: 60_000, hookTimeout: 120_000, expect: { poll: { timeout: 10_000 } } };

/** Pure tests of analysis, scripts and figures; then tests of one built site in browsers; then those that build their own. */
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
          ...patience,
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          exclude: [ownSites],
          globalSetup: ['tests/site/setup.ts'],
          // All look at one site, which nobody writes to, with two browsers at a time.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          ...patience,
          name: 'own-sites',
          include: [ownSites],
          globalSetup: ['tests/site/find-browser.ts'],
          maxWorkers: 1,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
