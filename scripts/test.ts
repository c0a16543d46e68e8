/**
 * `npm test`: types, lint, format, then all tests (pure, outside checks, faults, and one built site in a browser).
 * Words after `--` go to the test runner: `npm test -- tests/components`.
 */
import { spawnSync } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { requireBrowser } from './browser.ts';
import { projectRoot } from './options.ts';

const words = process.argv.slice(2);
const report = join(projectRoot, '.lineament', 'test-report.json');
await rm(report, { force: true });

const env = { ...process.env, CHROME_PATH: requireBrowser() };
const steps: [name: string, command: string, words: string[]][] = [
  ['types', 'astro', ['check', '--minimumSeverity', 'warning']],
  ['lint', 'eslint', ['.']],
  ['format', 'prettier', ['--check', '--log-level', 'warn', '.']],
  [
    'tests',
    'vitest',
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...words],
  ],
];
const failed: string[] = [];
for (const [name, command, args] of steps) {
  if (words.length > 0 && name !== 'tests') continue;
  console.log(`\n== ${name}`);
  if (spawnSync(command, args, { cwd: projectRoot, stdio: 'inherit', env }).status !== 0) failed.push(name);
}

const counts = await readFile(report, 'utf8').then(
  (text) => JSON.parse(text) as { numPassedTests: number; numFailedTests: number; numPendingTests: number },
  () => ({ numPassedTests: 0, numFailedTests: 0, numPendingTests: 0 }),
);
if (failed.length > 0) console.log(`\nNot in order: ${failed.join(', ')}`);
console.log(
  `\n${counts.numPassedTests} passed, ${counts.numFailedTests} failed, ${counts.numPendingTests} skipped`,
);
process.exit(failed.length > 0 || counts.numPassedTests === 0 ? 1 : 0);
