/**
 * A style sheet for a rasteriser that knows no variables and no themes: the rules of `figure` with the colours that `tokens`
 * gives to paper. Rules for certain screens are left out, and declarations that still hold a function are dropped.
 */
export function paperStyle(figure: string, tokens: string): string {
  const colours = paperColours(tokens);
  const plain = withoutAtRules(figure.replace(/\/\*[\s\S]*?\*\//g, ''));
  return plain
    .replace(/var\((--[\w-]+)\)/g, (whole, name: string) => colours.get(name) ?? whole)
    .replace(/[\w-]+:[^;{}]*\b(?:var|light-dark|color-mix|calc)\([^;{}]*;/g, '');
}

/** The style sheet of a whole picture: the figure's own, and the few rules of what stands around it. */
export function pictureStyle(figure: string, tokens: string): string {
  const colours = paperColours(tokens);
  const colour = (name: string) => {
    const found = colours.get(name);
    if (!found) throw new Error(`no colour on paper: "${name}"`);
    return found;
  };
  return [
    paperStyle(figure, tokens),
    `.ground{fill:${colour('--page')}}`,
    `.sheet{fill:${colour('--paper')};stroke:${colour('--hairline')}}`,
    `.ink{fill:${colour('--ink')}}`,
    `.second{fill:${colour('--ink-second')}}`,
    `.dotted{fill:none;stroke:${colour('--ink-second')};stroke-width:1.6;stroke-linecap:round;stroke-dasharray:.1 4}`,
  ].join('');
}

/** Names of colours to what they are on paper: the first of each pair. */
export function paperColours(tokens: string): Map<string, string> {
  const pairs = tokens.matchAll(/(--[\w-]+):\s*light-dark\(\s*(#[0-9a-f]{3,8})\s*,/gi);
  return new Map([...pairs].map((pair) => [pair[1]!, pair[2]!]));
}

/** Drops every block that begins with an at-rule, with all that it holds. */
function withoutAtRules(css: string): string {
  let kept = '';
  let depth = 0;
  let skipping = false;
  for (const sign of css) {
    if (sign === '@' && depth === 0) skipping = true;
    if (!skipping) kept += sign;
    if (sign === '{') depth++;
    if (sign === '}') depth--;
    if (sign === '}' && depth === 0) skipping = false;
  }
  return kept;
}
