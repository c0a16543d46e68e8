import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { partNames } from '../../components/parts/address.ts';
import { projectRoot } from '../../scripts/options.ts';
import { drawnOrder } from './drawn-order.ts';
import { writeInArabicLetters } from './fixtures/arabic-letters.ts';
import { shiftWithLateFaces } from './held-faces.ts';
import { overflowOf, screens, useBrowser } from './open-page.ts';
import { useSite } from './use-site.ts';
import { visit } from './visit.ts';

useBrowser();
const { at } = useSite('arabic-letters', async (content) => {
  const ours = join(projectRoot, 'content');
  await cp(join(ours, 'templates'), join(content, 'templates'), { recursive: true });
  for (const id of ['reed-trunks', 'loam-delvers']) await writeInArabicLetters(ours, content, id);
});

const trunks = 'arabic-reed-trunks/';
/** Every kind of page, and how many quantities it has at the least. */
const pages: [path: string, quantities: number][] = [
  [trunks, 300],
  [`${trunks}data/`, 50],
  ...partNames.map((part): [string, number] => [`${trunks}parts/${part}/`, 3]),
  ['arabic-loam-delvers/', 100],
  ['arabic-loam-delvers/data/', 20],
  ['methods/ar/', 10],
];

describe.each(screens)('from right to left on a $name', ({ width, height }) => {
  test.each(pages)('every range, error, date and unit of /%s is drawn as it is read', async (path, least) => {
    await visit(at(path), { viewport: { width, height } }, async ({ view, faults }) => {
      await view
        .locator('details')
        .evaluateAll((all) => all.forEach((each) => each.setAttribute('open', '')));
      const { seen, wrong } = await drawnOrder(view);
      expect(wrong).toEqual([]);
      expect(seen).toBeGreaterThanOrEqual(least);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
      expect(faults).toEqual([]);
    });
  });

  test('nothing on the explainer moves when the faces come late', async () => {
    await visit('about:blank', { viewport: { width, height } }, async ({ view }) => {
      expect(await shiftWithLateFaces(view, at(trunks))).toBe(0);
    });
  });
});

test('in print every range is drawn as it is read', async () => {
  await visit(at(trunks), { viewport: { width: 794, height: 1123 } }, async ({ view }) => {
    await view.emulateMedia({ media: 'print' });
    expect((await drawnOrder(view)).wrong).toEqual([]);
  });
});
