import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'vitest';
import { requireBrowser } from '../../scripts/browser.ts';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder } from '../../scripts/serve-folder.ts';
import { hardLineages } from '../site/fixtures/hard-lineages.ts';
import { writeLineage } from '../site/fixtures/write-lineage.ts';
import { useBrowser } from '../site/open-page.ts';
import { faultsOf } from '../site/states/faults.ts';
import { allCases, type Case } from '../site/states/pairs.ts';
import { furtherChoices, isPossible } from '../site/states/table.ts';

/**
 * Looks at every combination of page, theme, size, state and language, where the tests look at every pair. STATES_EVERY=12 takes
 * every twelfth combination, STATES_FROM=3 begins with the fourth of them, so that shares can be run one after the other.
 * STATES_KEPT names a folder in which the built site is kept, so that the next share need not build it again.
 */
const every = wholeNumber('STATES_EVERY', 1, 1);
const from = wholeNumber('STATES_FROM', 0, 0);
const kept = process.env['STATES_KEPT'];

function wholeNumber(name: string, otherwise: number, least: number): number {
  const value = Number(process.env[name] ?? otherwise);
  if (!Number.isInteger(value) || value < least)
    throw new Error(`${name} "${process.env[name]}" is not a whole number from ${least}`);
  return value;
}

const tableStep = '<Step focus="calamorhina-vivax" show="table">';
const trendStep =
  '<Step focus="calamorhina-vivax" show="trend">\n\n## The fitted line\n\nInvented.\n\n</Step>';

/** Builds the bundled lineages with what they lack: cards that are pages of their own, and a step with the fitted line. */
async function build(folder: string): Promise<string> {
  const [content, out] = [join(folder, 'content'), join(folder, 'site')];
  await cp(join(projectRoot, 'content'), content, { recursive: true });
  await writeLineage(
    content,
    hardLineages.find(({ id }) => id === 'two-hundred')!,
  );
  const story = join(content, 'reed-trunks', 'story.en.mdx');
  const told = await readFile(story, 'utf8');
  if (!told.includes(tableStep)) throw new Error(`no step ${tableStep} in the story of reed-trunks`);
  await writeFile(story, told.replace(tableStep, `${trendStep}\n\n${tableStep}`));
  const command = [join(projectRoot, 'scripts', 'build.ts'), '--content', content, '--out', out];
  const built = spawnSync(process.execPath, command, { cwd: projectRoot, encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`the site did not build\n${built.stdout}\n${built.stderr}`);
  return out;
}

const nameOf = (state: Case) => Object.values(state).join(', ');

/** The faults of a state; one that cannot be entered is a fault too, and the rest are still looked at. */
async function look(site: string, state: Case): Promise<string[]> {
  try {
    return await faultsOf(site, state);
  } catch (error) {
    return [error instanceof Error ? error.message : String(error)];
  }
}

useBrowser(requireBrowser);

test('every combination of page, theme, size, state and language', { timeout: 4 * 3_600_000 }, async () => {
  const all = allCases(furtherChoices).filter(isPossible);
  const share = all.filter((_, index) => index % every === from % every);
  const folder = kept ?? (await mkdtemp(join(tmpdir(), 'states-')));
  const site = join(folder, 'site');
  const server = await serveFolder(existsSync(site) ? site : await build(folder));
  const started = performance.now();
  const faulty: Case[] = [];
  for (const state of share) {
    const faults = await look(server.url, state);
    if (faults.length > 0) faulty.push(state);
    for (const fault of faults) console.log(`${nameOf(state)}: ${fault}`);
  }
  await server.close();
  if (kept === undefined) await rm(folder, { recursive: true, force: true });
  const seconds = (performance.now() - started) / 1000;
  console.log(
    `states: ${share.length} of ${all.length} combinations looked at in ${seconds.toFixed(0)} s; with a fault: ${faulty.length}`,
  );
});
