import type { Page } from 'playwright';

const number = String.raw`[−+]?\d+(?:\.\d+)?`;

/** What reads from left to right in every language: two parts that are drawn in this order. */
const pairs = [
  String.raw`(${number}%?) ?[–±÷×] ?(${number})`,
  String.raw`(${number}) \[(${number})`,
  String.raw`(${number})\s?(Ma|mm|%)`,
  String.raw`(?<![\d.])([−<>+]) ?(\d)`,
  // the parts of a date, a museum and its number, a letter of an equation
  String.raw`(\d{4})-(\d\d)`,
  String.raw`\b([A-Z]{2,5}) (\d+)`,
  String.raw`\b([a-z]) ?([=÷])`,
];

const blocks =
  'p, li, td, th, dt, dd, h1, h2, h3, h4, caption, figcaption, text, label, button, a, .value, .count, .age';

/**
 * Quantities on a page that are drawn in another order than they are read, each once, and how many were looked at. Those that a
 * line break parts are passed over.
 */
export function drawnOrder(view: Page): Promise<{ seen: number; wrong: string[] }> {
  return view.evaluate(look, { pairs, blocks });
}

/** Runs in the page: finds each pair in the words of a block, and compares the places where its parts are drawn. */
function look(asked: { pairs: string[]; blocks: string }): { seen: number; wrong: string[] } {
  const lettersOf = (block: Element) => {
    const letters: { node: Text; at: number }[] = [];
    const walker = document.createTreeWalker(block, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null)
      if (!node.parentElement!.closest('.visually-hidden, [hidden]'))
        for (let at = 0; at < node.data.length; at++)
          if (!/[\u200e\u200f\u2066-\u2069]/.test(node.data[at]!)) letters.push({ node, at });
    return letters;
  };
  const placeOf = ({ node, at }: { node: Text; at: number }) => {
    const range = document.createRange();
    range.setStart(node, at);
    range.setEnd(node, at + 1);
    return range.getBoundingClientRect();
  };
  const wrong = new Set<string>();
  let seen = 0;
  for (const block of document.querySelectorAll(asked.blocks)) {
    if (block.getClientRects().length === 0) continue;
    const letters = lettersOf(block);
    const words = letters.map(({ node, at }) => node.data[at]).join('');
    for (const pair of asked.pairs)
      for (const match of words.matchAll(new RegExp(pair, 'gd'))) {
        const [first, second] = [1, 2].map((part) => placeOf(letters[match.indices![part]![0]]!));
        if (Math.abs(first!.top - second!.top) > first!.height / 2) continue;
        seen++;
        if (first!.width === 0 || first!.left >= second!.left)
          wrong.add(`${match[0]} in “${words.slice(Math.max(0, match.index - 30), match.index + 40)}”`);
      }
  }
  return { seen, wrong: [...wrong] };
}
