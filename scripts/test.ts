/**
 * `npm test`: types, lint and format beside each other, then all tests (pure, outside checks, faults, and one built site in
 * browsers). Words after `--` go to the test runner: `npm test -- tests/components`.
 */
import { spawn, spawnSync } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { requireBrowser } from './browser.ts';
import { projectRoot } from './options.ts';

const words = process.argv.slice(2);
const report = join(projectRoot, '.lineament', 'test-report.json');
await rm(report, { force: true });

const env = { ...process.env, CHROME_PATH: requireBrowser() };
const checks: [name: string, command: string, words: string[]][] = [
  ['types', 'astro', ['check', '--minimumSeverity', 'warning']],
  ['lint', 'eslint', ['.']],
  ['format', 'prettier', ['--check', '--log-level', 'warn', '.']],
];

/** Runs a check and prints all of what it says once it has ended, so that checks beside each other can be read one by one. */
async function passes([name, command, args]: (typeof checks)[number]): Promise<boolean> {
  const colour = process.stdout.isTTY ? { FORCE_COLOR: '1' } : {};
  const child = spawn(command, args, {
    cwd: projectRoot,
    env: { ...env, ...colour },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<number | null>((done, fail) => child.on('close', done).on('error', fail));
  const [said, warned, status] = await Promise.all([text(child.stdout), text(child.stderr), ended]);
  console.log(`\n== ${name}\n${said}${warned}`);
  return status === 0;
}

const isWhole = words.length === 0;
const found = isWhole ? await Promise.all(checks.map(passes)) : [];
const failed = checks.map(([name]) => name).filter((_, index) => found[index] === false);

console.log('\n== tests');
const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
const options = { cwd: projectRoot, stdio: 'inherit', env } as const;
if (spawnSync('vitest', ['run', ...reporters, ...words], options).status !== 0) failed.push('tests');

const counts = await readFile(report, 'utf8').then(
  (json) => JSON.parse(json) as { numPassedTests: number; numFailedTests: number; numPendingTests: number },
  () => ({ numPassedTests: 0, numFailedTests: 0, numPendingTests: 0 }),
);
if (failed.length > 0) console.log(`\nNot in order: ${failed.join(', ')}`);
console.log(
  `\n${counts.numPassedTests} passed, ${counts.numFailedTests} failed, ${counts.numPendingTests} skipped`,
);
process.exit(failed.length > 0 || counts.numPassedTests === 0 ? 1 : 0);
