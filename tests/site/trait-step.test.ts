import { spawnSync } from 'node:child_process';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { projectRoot } from '../../scripts/options.ts';
import { serveFolder, type FolderServer } from '../../scripts/serve-folder.ts';
import { closePage, openPage, useBrowser } from './open-page.ts';

useBrowser();
let content: string;
let server: FolderServer;
const out = join(projectRoot, '.lineament', `trait-step-${process.pid}`);

/** A last step that asks for the plate of the second trait. */
const step = `<Step focus="calamorhina-vivax" trait="condylobasal-length" show="trend">

## Skulls grew

<Value of="calamorhina-vivax" trait="condylobasal-length" />

</Step>

`;

beforeAll(async () => {
  content = await mkdtemp(join(tmpdir(), 'trait-step-'));
  await cp(join(projectRoot, 'content'), content, { recursive: true });
  const story = join(content, 'reed-trunks', 'story.en.mdx');
  const text = await readFile(story, 'utf8');
  await writeFile(
    story,
    text.replace('## What would change our minds', `${step}## What would change our minds`),
  );
  const command = [join(projectRoot, 'scripts', 'build.ts'), '--content', content, '--out', out];
  const built = spawnSync(process.execPath, command, { cwd: projectRoot, encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`the lineage did not build\n${built.stdout}\n${built.stderr}`);
  server = await serveFolder(out);
}, 240_000);
afterAll(async () => {
  await server?.close();
  await rm(content, { recursive: true, force: true });
  await rm(out, { recursive: true, force: true });
});

const shown = '.plate:visible';

test('a step brings the plate of its trait with its fitted line, and the next step takes it away', async () => {
  const { view, faults } = await openPage(`${server.url}reed-trunks/`);
  const idShown = () => view.locator(shown).getAttribute('id');
  const centre = (selector: string) =>
    view.locator(selector).evaluate((element) => element.scrollIntoView({ block: 'center' }));
  expect(await idShown()).toBe('plate-wide');
  await centre('.step[data-trait]');
  await expect.poll(idShown).toBe('plate-wide-condylobasal-length');
  await expect.poll(() => view.locator(`${shown} .trend-band`).isVisible()).toBe(true);
  expect(await view.locator('.caption:visible .caption-value').innerText()).toMatch(/^\s*5\d\d ± /);
  await centre('.step[data-step="1"]');
  await expect.poll(idShown).toBe('plate-wide');
  expect(faults).toEqual([]);
  await closePage({ view });
});

test('without script the page keeps its own trait, and the page of the change shows every trait small on the same ages', async () => {
  const { view } = await openPage(`${server.url}reed-trunks/`, { javaScriptEnabled: false });
  expect(await view.locator(shown).getAttribute('id')).toBe('plate-wide');
  await view.locator('#change a').click();
  expect(await view.locator('#change .change-chart').count()).toBeGreaterThanOrEqual(2);
  await closePage({ view });
});
