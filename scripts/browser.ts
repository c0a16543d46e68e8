import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright';

const systemNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * Path of a Chromium to test with: one that the machine has, else the test tool's own download, else Debian's package
 * when run as root. Throws an Error that says how to get one.
 */
export function requireBrowser(): string {
  const found = findBrowser();
  if (found) return found;
  console.log('No Chromium found; asking the test tool for its own …');
  spawnSync('playwright', ['install', 'chromium'], { stdio: 'inherit', timeout: 300_000 });
  const downloaded = findBrowser() ?? installDebianChromium();
  if (!downloaded)
    throw new Error(
      'no Chromium to test with; install one (Debian: apt-get install chromium) or set CHROME_PATH',
    );
  return downloaded;
}

/** Path of a Chromium that is there already, or undefined. CHROME_PATH goes before all. */
export function findBrowser(): string | undefined {
  const named = process.env['CHROME_PATH'];
  if (named && existsSync(named)) return named;
  for (const name of systemNames) {
    const where = spawnSync('which', [name], { encoding: 'utf8' });
    if (where.status === 0) return where.stdout.trim();
  }
  const own = chromium.executablePath();
  return existsSync(own) ? own : undefined;
}

function installDebianChromium(): string | undefined {
  if (process.getuid?.() !== 0 || spawnSync('which', ['apt-get']).status !== 0) return undefined;
  console.log('Installing Debian’s chromium …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit', env });
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
    stdio: 'inherit',
    env,
  });
  return findBrowser();
}

/** Launch options that also work for root in a container, and keep the browser from calling home. */
export function launchOptions(executablePath: string) {
  return {
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  };
}
