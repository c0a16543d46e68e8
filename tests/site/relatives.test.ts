import type { Page } from 'playwright';
import { describe, expect, inject, test } from 'vitest';
import type { Kin } from '../../components/figures/bracket-tree/kin.ts';
import { relationships } from '../components/bracket-tree/relationships.ts';
import { closePage, openPage, overflowOf, screens, useBrowser } from './open-page.ts';
import { visit } from './visit.ts';

const lineage = `${inject('siteUrl')}reed-trunks/`;
useBrowser();

/** The tree as the page's nested list has it. */
async function listed(view: Page): Promise<Kin> {
  return view.locator('.kin > [data-kin]').evaluate((entry) => {
    const read = (item: Element): Kin => ({
      id: (item as HTMLElement).dataset['kin']!,
      children: [...item.querySelectorAll(':scope > ul > [data-kin]')].map(read),
    });
    return read(entry);
  });
}

/** Animals of the visible figure from top to bottom. */
async function drawn(view: Page): Promise<string[]> {
  return view.locator('.kin-tree:visible .layer-bracket-tips').evaluateAll((groups) =>
    groups
      .map((group) => ({
        id: (group as SVGElement).dataset['of']!,
        top: group.querySelector('.tip-label')!.getBoundingClientRect().top,
      }))
      .sort((a, b) => a.top - b.top)
      .map(({ id }) => id),
  );
}

const orderOf = (kin: Kin): string[] =>
  kin.children.length === 0 ? [kin.id] : kin.children.flatMap(orderOf);

describe.each(screens)('the tree of relatives on a $name', (size) => {
  test('turns a fork by a click near it: the order changes, the relationships do not', async () => {
    await visit(lineage, { viewport: size }, async ({ view, faults }) => {
      const before = await listed(view);
      expect(await drawn(view)).toEqual(orderOf(before));
      const handle = view.locator('.kin-tree:visible .turn-handle').nth(2);
      await handle.scrollIntoViewIfNeeded();
      const box = (await handle.boundingBox())!;
      await view.mouse.click(box.x + box.width / 2 - 6, box.y + box.height / 2);
      const after = await listed(view);
      expect(orderOf(after)).not.toEqual(orderOf(before));
      expect(relationships(after)).toBe(relationships(before));
      expect(await drawn(view)).toEqual(orderOf(after));
      expect(faults).toEqual([]);
    });
  });

  test('turns a fork by key from the list, says what it did, and keeps the focus', async () => {
    await visit(lineage, { viewport: size }, async ({ view }) => {
      const before = await listed(view);
      await view.locator('.kin-list summary').focus();
      await view.keyboard.press('Enter');
      await view.keyboard.press('Tab');
      const first = view.locator('[data-turn]').first();
      expect(await first.evaluate((button) => button === document.activeElement)).toBe(true);
      await view.keyboard.press('Enter');
      const after = await listed(view);
      expect(orderOf(after)).not.toEqual(orderOf(before));
      expect(relationships(after)).toBe(relationships(before));
      expect(await view.locator('.bracket-parts [role="status"]').textContent()).toMatch(/^Turned\./);
      expect(await first.evaluate((button) => button === document.activeElement)).toBe(true);
      await view.keyboard.press('Space');
      expect(await listed(view)).toEqual(before);
    });
  });

  test('gives every fork a button of at least 44 by 44 pixels', async () => {
    await visit(lineage, { viewport: size }, async ({ view }) => {
      await view.locator('.kin-list summary').click();
      const boxes = await view.locator('[data-turn]').evaluateAll((buttons) =>
        buttons.map((button) => {
          const { width, height } = button.getBoundingClientRect();
          return Math.min(width, height);
        }),
      );
      expect(boxes).toHaveLength(22);
      expect(Math.min(...boxes)).toBeGreaterThanOrEqual(44);
    });
  });

  test('keeps its names apart and inside, as the letters really stand', async () => {
    await visit(lineage, { viewport: size }, async ({ view }) => {
      const { boxes, frame } = await view.locator('.kin-tree:not(.kin-axis):visible').evaluate((figure) => {
        const plain = ({ left, right, top, bottom }: DOMRect) => ({ left, right, top, bottom });
        return {
          boxes: [...figure.querySelectorAll('.tip-label')].map((label) =>
            plain(label.getBoundingClientRect()),
          ),
          frame: plain(figure.getBoundingClientRect()),
        };
      });
      expect(boxes).toHaveLength(23);
      const rows = [...boxes].sort((a, b) => a.top - b.top);
      rows.forEach((box, row) => {
        expect(box.right).toBeLessThanOrEqual(frame.right + 0.5);
        // A line box is taller than its letters; half a line is what two names may share.
        if (row > 0) expect(box.top - rows[row - 1]!.top).toBeGreaterThan((box.bottom - box.top) * 0.75);
      });
    });
  });

  test('states its ages, and they are in sight wherever the figure is', async () => {
    await visit(lineage, { viewport: size }, async ({ view }) => {
      const axis = view.locator('.kin-axis:visible');
      expect(await axis.count()).toBe(1);
      expect(await axis.evaluate((each) => getComputedStyle(each).position)).toBe('sticky');
      await view.locator('.kin-tree:not(.kin-axis):visible').evaluate((each) => each.scrollIntoView());
      const { y, height } = (await axis.boundingBox())!;
      expect(y + height).toBeLessThanOrEqual((size.height ?? 900) + 24);
    });
  });

  test('is a plain figure with its nested list where script is off', async () => {
    const options = { viewport: size, javaScriptEnabled: false };
    await visit(`${lineage}parts/relatives/`, options, async ({ view }) => {
      expect(await view.locator('.kin-tree:not(.kin-axis):visible').count()).toBe(1);
      expect(await view.locator('.turn-handle:visible').count()).toBe(0);
      await view.locator('.kin-list summary').click();
      expect(await view.locator('.kin-animal:visible').count()).toBe(23);
      expect(await view.locator('[data-turn]:visible').count()).toBe(0);
      expect(await overflowOf(view)).toBeLessThanOrEqual(0);
    });
  });
});

test('the living animal that the story opens with is not at an end of the tree', async () => {
  await visit(lineage, {}, async ({ view }) => {
    const order = await drawn(view);
    expect(order.indexOf('calamorhina-vivax')).toBeGreaterThan(0);
    expect(order.indexOf('calamorhina-vivax')).toBeLessThan(order.length - 1);
  });
});

test('a turn is shown in steps between, and every line stays joined on the way', async () => {
  const { view } = await openPage(lineage);
  const broken = await view.evaluate(async () => {
    const figure = [...document.querySelectorAll('.kin-tree')].find(
      (each) => each.getBoundingClientRect().width,
    )!;
    const group = (id: string) => figure.querySelector<SVGGElement>(`[data-of="${id}"]`)!;
    const heightOf = (line: Element) => line.getBoundingClientRect();
    const root = document.querySelector<HTMLElement>('.kin > [data-kin]')!;
    document.querySelector<HTMLElement>('[data-turn]')!.click();
    let seen = 0;
    let worst = 0;
    for (let frame = 0; frame < 60; frame++) {
      await new Promise(requestAnimationFrame);
      if (group(root.dataset['kin']!).hasAttribute('transform')) seen++;
      for (const fork of document.querySelectorAll<HTMLElement>('[data-kin]:has(> ul)')) {
        const across = heightOf(group(fork.dataset['kin']!).querySelector('.across')!);
        const ends = [...fork.querySelectorAll<HTMLElement>(':scope > ul > [data-kin]')].map(
          (child) => heightOf(group(child.dataset['kin']!).querySelector('.kin-line')!).top,
        );
        worst = Math.max(
          worst,
          Math.abs(across.top - Math.min(...ends)),
          Math.abs(across.bottom - Math.max(...ends)),
        );
      }
    }
    return { seen, worst };
  });
  expect(broken.seen).toBeGreaterThan(5);
  expect(broken.worst).toBeLessThan(3);
  await closePage({ view });
});
