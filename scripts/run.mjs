// Runs one command of the project: `node scripts/run.mjs start|test|build|check|compute|bench [words]`.
// Plain JavaScript without packages, because on a fresh clone it runs before anything is installed, on Node 20.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { constants } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const stamp = join(root, 'node_modules', '.installed-lock');
const commands = ['start', 'test', 'build', 'check', 'compute', 'bench'];

const [command, ...words] = process.argv.slice(2);
if (!commands.includes(command)) {
  console.error(`unknown command: "${command ?? ''}"; there are ${commands.join(', ')}`);
  process.exit(2);
}
install();
run(command, words);

/** Installs the packages of the lock file unless the very same lock was installed before. */
function install() {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return;
  console.error('Installing the packages that Lineament needs (once) …');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  // Everything goes to the error stream, so that `compute` prints its JSON and nothing else.
  const done = spawnSync(npm, ['ci', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) {
    console.error(
      'npm ci failed: see above. A network or a proxy is the usual cause; run the command again when it is mended.',
    );
    process.exit(done.status ?? 1);
  }
  writeFileSync(stamp, lock);
}

/** Hands over to the TypeScript command on the Node that comes with the project. */
function run(name, args) {
  const bin = join(root, 'node_modules', '.bin');
  const separator = process.platform === 'win32' ? ';' : ':';
  const child = spawn(
    join(bin, process.platform === 'win32' ? 'node.cmd' : 'node'),
    [join(root, 'scripts', `${name}.ts`), ...args],
    {
      cwd: root,
      stdio: 'inherit',
      shell: process.platform === 'win32',
      env: {
        ...process.env,
        PATH: `${bin}${separator}${process.env.PATH}`,
        INIT_CWD: process.env.INIT_CWD ?? process.cwd(),
        // Half a second of every command is compiling the same code again.
        NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE ?? join(root, 'node_modules', '.cache', 'node'),
        ASTRO_TELEMETRY_DISABLED: '1',
        ASTRO_DEV_BACKGROUND: '0',
      },
    },
  );
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  child.on('error', (error) => {
    console.error(
      `could not start Node 24 from node_modules: ${error.message}; delete node_modules and run the command again`,
    );
    process.exit(1);
  });
  child.on('exit', (code, signal) => process.exit(code ?? 128 + (constants.signals[signal] ?? 0)));
}
