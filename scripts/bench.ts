/** `npm run bench`: measures speed and size; prints medians with quartiles. Nothing here passes or fails. */
import { spawnSync } from 'node:child_process';
import { cpus, totalmem } from 'node:os';
import { findBrowser } from './browser.ts';
import { projectRoot } from './options.ts';

console.log(
  `Machine: ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`,
);
const env = { ...process.env, ...(findBrowser() && { CHROME_PATH: findBrowser() }) };
const { status } = spawnSync('vitest', ['bench', '--run', '--project', 'pure', ...process.argv.slice(2)], {
  cwd: projectRoot,
  stdio: 'inherit',
  env,
});
process.exit(status ?? 1);
