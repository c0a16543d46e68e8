import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import {
  atBench,
  bench,
  give,
  inHand,
  nameOwn,
  notes,
  openPlain,
  press,
  ready,
  seenAt,
  setScale,
  site,
  tap,
  textOf,
  type Place,
} from './measuring-hands.ts';
import { closePage, openPage, overflowOf, screens } from './open-page.ts';
import { rulesBroken } from './rules.ts';

describe('what is opened', () => {
  test('stays on the machine: nothing is asked for, and leaving points behind is asked about', async () => {
    const faults = await atBench(async (view) => {
      await openPlain(view);
      await tap(view, [100, 100]);
      await tap(view, [300, 100]);
      await openPlain(view, 640, 480);
      const ask = view.locator('dialog[open]');
      await ask.waitFor();
      await ask.getByRole('button', { name: 'No' }).click();
      expect(await notes(view)).toContain('800 × 600');
      expect(await view.locator('.mark').count()).toBe(2);
      await openPlain(view, 640, 480);
      await ask.getByRole('button', { name: 'Yes' }).click();
      await view.getByText('640 × 480').waitFor();
      expect(await view.locator('.mark').count()).toBe(0);
    });
    expect(faults).toEqual([]);
  });

  test('shows no point of the last picture on the next, even while that is still being kept', async () => {
    await atBench(async (view) => {
      await openPlain(view);
      await tap(view, [100, 100]);
      expect(await view.locator('.mark').count()).toBe(1);
      // A shelf that never opens.
      await view.evaluate(() => (IDBFactory.prototype.open = () => ({}) as IDBOpenDBRequest));
      await openPlain(view, 640, 480);
      await view.locator('dialog[open]').getByRole('button', { name: 'Yes' }).click();
      await view.getByText('640 × 480').waitFor();
      expect(await view.locator('.mark').count()).toBe(0);
    });
  });

  test.each([
    ['a text', 'notes.png', 'not a picture', /notes\.png is not a picture/],
    [
      'a drawing with script',
      'a.svg',
      '<svg xmlns="http://www.w3.org/2000/svg"><script>window.ran = 1</script></svg>',
      /could run script.*<script/,
    ],
    ['a picture that breaks off', 'half.png', '\x89PNG\r\n\x1a\n\0\0\0\rIHDR', /cannot be read to its end/],
  ])('is refused with its reason when it is %s', async (_, name, content, reason) => {
    const faults = await atBench(async (view) => {
      await give(view, name, Buffer.from(content, 'latin1'), 'image/png');
      await view.locator('[data-picture-notes] p').waitFor();
      expect(await notes(view)).toMatch(reason);
      expect(await view.locator('.has-picture').count()).toBe(0);
      expect(await view.evaluate(() => 'ran' in window)).toBe(false);
    });
    expect(faults).toEqual([]);
  });

  test('is put upright and loses the position of its site, in what is shown and what is saved', async () => {
    await atBench(async (view) => {
      const turned = await sharp({ create: { width: 400, height: 300, channels: 3, background: '#a87' } })
        .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
        .withMetadata({ orientation: 6 })
        .withExifMerge({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
        .jpeg()
        .toBuffer();
      await give(view, 'Turned Skull.JPG', turned, 'image/jpeg');
      await ready(view);
      expect(await notes(view)).toMatch(
        /turned-skull\.jpg, 300 × 400 px[\s\S]*put upright[\s\S]*position was taken out/,
      );
      const [download] = await Promise.all([view.waitForEvent('download'), press(view, 'save-picture')]);
      expect(download.suggestedFilename()).toBe('turned-skull.jpg');
      const saved = await sharp(await readFile(await download.path())).metadata();
      expect([saved.width, saved.height, saved.exif, saved.orientation]).toEqual([
        300,
        400,
        undefined,
        undefined,
      ]);
    });
  });

  test('is made smaller above 100 million px, and that is said', async () => {
    await atBench(async (view) => {
      await openPlain(view, 11_000, 9_200);
      expect(await notes(view)).toMatch(/101 million px, more than 100 million/);
      const { width, height } = await view
        .locator('[data-picture]')
        .evaluate((image: HTMLImageElement) => ({ width: image.naturalWidth, height: image.naturalHeight }));
      expect(width * height).toBeLessThanOrEqual(100_000_000);
      expect(width / height).toBeCloseTo(11_000 / 9_200, 3);
    });
  });
});

describe('a specimen', () => {
  test('is lost in part, undone, redone, measured again, and taken away', async () => {
    await atBench(
      async (view) => {
        await openPlain(view);
        await nameOwn(view, ['Nose', 'Eye', 'Rear']);
        await setScale(view, '25');
        await tap(view, [100, 500]);
        await tap(view, [600, 500]);
        await press(view, 'absent');
        await tap(view, [120, 300]);
        await tap(view, [130, 330]);
        await press(view, 'undo');
        expect(await view.locator('.mark-break').count()).toBe(1);
        await press(view, 'redo');
        expect(await view.locator('.mark-break').count()).toBe(2);
        await view.click('[data-slot="landmark eye"]');
        await tap(view, [300, 200]);
        expect(await inHand(view)).toBe('Rear');
        await tap(view, [500, 200]);
        await press(view, 'add-round');
        expect(await view.locator('.mark-landmark').count()).toBe(0);
        await tap(view, [301, 200]);
        const sheet = (await textOf(view, 'sheet'))!.trim().split('\n');
        expect(sheet).toHaveLength(3);
        expect(sheet[1]).toMatch(/^plate-1,1,,,(299|30[01])\.\d,/);
        expect(sheet[2]).toMatch(/^plate-1,2,,,30[0-2]\.\d,[\d.]+,,$/);
        expect(await view.locator('[data-missing]').innerText()).toContain('1 point');
        expect(await textOf(view, 'record')).toMatch(
          /lost:\n {4}- \{ landmark: nose, break: \[\[[\d., ]+\], \[[\d., ]+\]\] \}\n {2}landmarks:\n {4}view: left-lateral\n[\s\S]*scale: \{ from: \[[\d., ]+\], to: \[[\d., ]+\], mm: 25 \}/,
        );
        const [download] = await Promise.all([view.waitForEvent('download'), press(view, 'download sheet')]);
        expect(await readFile(await download.path(), 'utf8')).toBe(await textOf(view, 'sheet'));
        await press(view, 'copy record');
        await view.getByText('Copied.').waitFor();
        expect(await view.evaluate(() => navigator.clipboard.readText())).toBe(await textOf(view, 'record'));
        await press(view, 'finish');
        await expect.poll(() => view.locator('[data-aside]').innerText()).toContain('1 specimen');
        expect((await textOf(view, 'sheet'))!.trim().split('\n')).toEqual(sheet);
      },
      { permissions: ['clipboard-read', 'clipboard-write'] },
    );
  });

  test('survives a reload with its picture, until it is forgotten', async () => {
    await atBench(async (view) => {
      await openPlain(view);
      await tap(view, [100, 100]);
      await tap(view, [300, 100]);
      await view.reload();
      await ready(view);
      await expect.poll(() => view.locator('.mark').count()).toBe(2);
      expect(await view.locator('[data-picture]').evaluate((image: HTMLImageElement) => image.width)).toBe(
        800,
      );
      await press(view, 'forget');
      await view.locator('dialog[open]').getByRole('button', { name: 'Yes' }).click();
      await view.getByText('Nothing of it is kept').waitFor();
      await view.reload();
      await view.waitForSelector('measuring-bench:not([hidden])');
      expect(await view.locator('.has-picture').count()).toBe(0);
      expect(await view.evaluate(() => localStorage.length)).toBe(0);
    });
  });

  test('is measured by keys alone', async () => {
    await atBench(async (view) => {
      const tabTo = async (selector: string) => {
        for (let count = 0; count < 120; count++) {
          if (await view.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
          await view.keyboard.press('Tab');
        }
        throw new Error(`no key leads to ${selector}`);
      };
      await tabTo('[data-do="practice"]');
      await view.keyboard.press('Enter');
      await ready(view);
      await tabTo('[data-stage]');
      await view.keyboard.press('Enter');
      for (let count = 0; count < 5; count++) await view.keyboard.press('Shift+ArrowRight');
      await view.keyboard.press('+');
      await view.keyboard.press('Enter');
      expect(await inHand(view)).toBe('snout tip');
      await view.keyboard.press('ArrowUp');
      await view.keyboard.press('Enter');
      await tabTo('[data-scale-mm]');
      await view.keyboard.type('50');
      await view.keyboard.press('Tab');
      expect(await view.locator('[data-scale-said]').innerText()).toContain('0.1000 mm');
      // the cross begins in the middle, 1320, 800; five steps of 100 px right, one of 10 px up
      expect((await textOf(view, 'sheet'))!.split('\n')[1]!.split(',').slice(0, 4)).toEqual([
        'obm-1183',
        '1',
        '1820.0',
        '790.0',
      ]);
    });
  });

  test('is measured by touch alone, on a phone', async () => {
    await atBench(
      async (view) => {
        await view.tap('[data-do="practice"]');
        await ready(view);
        const touch = async (place: Place) =>
          view.locator('[data-stage]').tap({ position: await seenAt(view, place) });
        await touch([271, 1517]);
        await touch([907, 1521]);
        await touch([300, 900]);
        await view.tap('[data-do="previous"]');
        await view.tap('[data-do="right"]');
        const before = Number(
          (await view.evaluate(() => localStorage.getItem('lineament.bench')))!.match(
            /"prosthion":\[([\d.]+)/,
          )![1],
        );
        await view.tap('[data-do="right"]');
        const after = Number(
          (await view.evaluate(() => localStorage.getItem('lineament.bench')))!.match(
            /"prosthion":\[([\d.]+)/,
          )![1],
        );
        expect(after - before).toBeCloseTo(10, 6);
        expect(await overflowOf(view)).toBe(0);
      },
      { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
    );
  });
});

describe.each(screens)('the bench on a $name', ({ width, height }) => {
  test.each(['light', 'dark'] as const)(
    'is free of faults that axe-core 4.14 finds, %s',
    async (colorScheme) => {
      await atBench(
        async (view) => {
          await press(view, 'practice');
          await ready(view);
          expect(await rulesBroken(view, { rules: 'all' })).toEqual([]);
          expect(await overflowOf(view)).toBe(0);
        },
        { viewport: { width, height }, colorScheme },
      );
    },
  );
});

test('without script the bench says what it needs, and shows no tool that does nothing', async () => {
  const { view } = await openPage(bench, { javaScriptEnabled: false });
  expect(await view.locator('.bench-needs').innerText()).toContain('needs script');
  expect(await view.locator('[data-do]:visible').count()).toBe(0);
  await closePage({ view });
});

test('the bench speaks Spanish at its own address, and the shelf leads to it', async () => {
  await atBench(async (view) => {
    await view.goto(site);
    await view.getByRole('link', { name: 'at the bench' }).click();
    await view.getByRole('link', { name: 'español' }).click();
    expect(await view.locator('html').getAttribute('lang')).toBe('es');
    await view.waitForSelector('measuring-bench:not([hidden])');
    expect(await inHand(view)).toBe('barra de escala, un extremo');
  });
});
