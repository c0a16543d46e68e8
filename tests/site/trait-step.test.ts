import { cp, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../scripts/options.ts';
import { closePage, openPage, useBrowser } from './open-page.ts';
import { useSite } from './use-site.ts';

useBrowser();

/** A last step that asks for the plate of the second trait. */
const step = `<Step focus="calamorhina-vivax" trait="condylobasal-length" show="trend">

## Skulls grew

<Value of="calamorhina-vivax" trait="condylobasal-length" />

</Step>

`;

const { at } = useSite('trait-step', async (content) => {
  await cp(join(projectRoot, 'content'), content, { recursive: true });
  const story = join(content, 'reed-trunks', 'story.en.mdx');
  const text = await readFile(story, 'utf8');
  const next = text.replace('## What would change our minds', `${step}## What would change our minds`);
  await writeFile(story, next);
});

const shown = '.plate:visible';

test('a step brings the plate of its trait with its fitted line, and the next step takes it away', async () => {
  const { view, faults } = await openPage(at('reed-trunks/'));
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
  const { view } = await openPage(at('reed-trunks/'), { javaScriptEnabled: false });
  expect(await view.locator(shown).getAttribute('id')).toBe('plate-wide');
  await view.locator('#change a').click();
  expect(await view.locator('#change .change-chart').count()).toBeGreaterThanOrEqual(2);
  await closePage({ view });
});
