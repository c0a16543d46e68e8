/** `npm run bench`: measures speed and size; prints medians with quartiles. Nothing here passes or fails. */
import { spawnSync } from 'node:child_process';
import { cpus, totalmem } from 'node:os';
import { findBrowser } from './browser.ts';
import { contentFolder, projectRoot } from './options.ts';

console.log(
  `Machine: ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`,
);
// `--content DIR` is ours; every other word goes to the runner.
const words = process.argv.slice(2);
const at = words.indexOf('--content');
const contentDir = contentFolder(at < 0 ? undefined : words.splice(at, 2)[1]);
const env = {
  ...process.env,
  LINEAMENT_CONTENT: contentDir,
  ...(findBrowser() && { CHROME_PATH: findBrowser() }),
};
const { status } = spawnSync('vitest', ['bench', '--run', '--project', 'pure*', ...words], {
  cwd: projectRoot,
  stdio: 'inherit',
  env,
});
process.exit(status ?? 1);
