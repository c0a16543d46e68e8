import type { Page } from 'playwright';

/**
 * Quantities on a page that are drawn in another order than they are read: of two figures joined by a sign, of a figure and its unit,
 * and of the parts of a date, the first stands to the right of the next. All of these read from left to right in every language.
 * Says how many were looked at and which are wrong; those of which a line break parts the ends are passed over.
 */
export function drawnOrder(view: Page): Promise<{ seen: number; wrong: string[] }> {
  return view.evaluate(() => {
    const marks = /[\u200e\u200f\u2066-\u2069]/;
    const number = String.raw`[−+]?\d+(?:\.\d+)?`;
    const pairs = [
      `(${number}%?) ?[–±÷×] ?(${number})`,
      `(${number}) \\[(${number})`,
      `(${number})\\s?(Ma|mm|%)`,
      `(?<![\\d.])([−<>+]) ?(\\d)`,
      String.raw`(\d{4})-(\d\d)`,
      String.raw`\b([A-Z]{2,5}) (\d+)`,
      String.raw`\b([a-z]) ?([=÷])`,
    ].map((source) => new RegExp(source, 'gd'));
    const blocks = [
      ...document.querySelectorAll<Element>(
        'p, li, td, th, dt, dd, h1, h2, h3, h4, caption, figcaption, text, label, button, a, option',
      ),
    ];
    const seen = new Set<string>();
    const wrong: string[] = [];
    let count = 0;
    for (const block of blocks) {
      if (block.getClientRects().length === 0 || block.tagName === 'OPTION') continue;
      const letters: { letter: string; node: Text; at: number }[] = [];
      const walker = document.createTreeWalker(block, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null)
        if (!node.parentElement!.closest('.visually-hidden, [hidden]'))
          for (let at = 0; at < node.data.length; at++)
            if (!marks.test(node.data[at]!)) letters.push({ letter: node.data[at]!, node, at });
      const content = letters.map(({ letter }) => letter).join('');
      const placeOf = (index: number) => {
        const { node, at } = letters[index]!;
        const range = document.createRange();
        range.setStart(node, at);
        range.setEnd(node, at + 1);
        return range.getBoundingClientRect();
      };
      for (const pair of pairs)
        for (const match of content.matchAll(pair)) {
          const [first, second] = [match.indices![1]!, match.indices![2]!].map(([start]) => placeOf(start));
          if (!first || !second || Math.abs(first.top - second.top) > first.height / 2) continue;
          count++;
          if (first.left < second.left || first.width === 0) continue;
          const said = `${match[0]} in “${content.slice(Math.max(0, match.index - 30), match.index + 40).replace(/\s+/g, ' ')}”`;
          if (!seen.has(said)) wrong.push(said);
          seen.add(said);
        }
    }
    return { seen: count, wrong };
  });
}
