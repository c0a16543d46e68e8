import { expect, inject, test } from 'vitest';
import { useBrowser } from './open-page.ts';
import { rulesBroken } from './rules.ts';
import { visit } from './visit.ts';

useBrowser();

test('the outside checker names what is broken and where, and only where it is asked to look', async () => {
  await visit(`${inject('siteUrl')}methods/`, {}, async ({ view }) => {
    expect(await rulesBroken(view)).toEqual([]);
    await view.locator('main').evaluate((main) => {
      const picture = new Image();
      picture.id = 'without-words';
      main.append(picture);
    });
    expect(await rulesBroken(view)).toEqual(['image-alt: #without-words']);
    expect(await rulesBroken(view, { without: 'img' })).toEqual([]);
    expect(await rulesBroken(view, { within: 'h1' })).toEqual([]);
  });
});
