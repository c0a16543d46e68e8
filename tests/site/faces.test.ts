import { describe, expect, inject, test } from 'vitest';
import { closePage, openPage, screens, useBrowser } from './open-page.ts';
import { shiftWithLateFaces } from './held-faces.ts';

useBrowser();
const site = inject('siteUrl');

describe.each(screens)('on a $name', ({ width, height }) => {
  test.each(['reed-trunks/', 'reed-trunks/es/', 'loam-delvers/', ''])(
    'nothing on /%s moves when the faces come late',
    async (path) => {
      const opened = await openPage('about:blank', { viewport: { width, height } });
      expect(await shiftWithLateFaces(opened.view, site + path)).toBe(0);
      await closePage(opened);
    },
  );
});

test('a bold word and a Latin name are bold and slanted in the faces of the system too', async () => {
  const opened = await openPage(`${site}reed-trunks/`);
  const sheets = await opened.view.evaluate(() =>
    [...document.fonts].map(
      ({ family, style, weight }) => `${family.replaceAll('"', '')} ${style} ${weight}`,
    ),
  );
  for (const face of [
    'Reading stand-in normal 400 520',
    'Reading stand-in normal 521 700',
    'Name stand-in italic 400 700',
    'Label stand-in normal 400 549',
    'Label stand-in normal 550 700',
  ])
    expect(sheets).toContain(face);
  await closePage(opened);
});
