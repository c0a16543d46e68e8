/** One attribute with the place of its name in the text. */
export interface SvgAttribute {
  readonly name: string;
  readonly value: string;
  readonly start: number;
}

/** One element of a drawing; `start` and `end` are the offsets of its opening tag. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: readonly SvgAttribute[];
  readonly children: SvgElement[];
  readonly start: number;
  readonly end: number;
}

/** Where a text stops being well-formed, and how. */
export interface SvgFault {
  readonly at: number;
  readonly problem: string;
}

const token =
  /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\?[\s\S]*?\?>|<![^>[]*(?:\[[\s\S]*?\])?[^>]*>|<\/([\w:.-]+)\s*>|<([\w:.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>/g;
const attribute = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/**
 * Reads a drawing into its elements; text between them is left aside. A fault is given for what is not well-formed: a tag
 * that is not closed, or a mark `<` that begins nothing. Entities of the text's own are not read.
 */
export function readSvg(text: string): SvgElement | SvgFault {
  const open: SvgElement[] = [];
  let root: SvgElement | undefined;
  let at = 0;
  for (const match of text.matchAll(token)) {
    const stray = text.slice(at, match.index).indexOf('<');
    if (stray >= 0) return { at: at + stray, problem: 'this mark begins no tag' };
    at = match.index + match[0].length;
    const [, closing, name, written = '', selfClosed] = match;
    if (closing !== undefined) {
      const element = open.pop();
      if (element?.name !== closing)
        return { at: match.index, problem: `</${closing}> closes nothing that is open` };
    } else if (name !== undefined) {
      if (root && open.length === 0) return { at: match.index, problem: 'there is a second drawing' };
      const element = elementOf(name, written, match.index, at);
      open.at(-1)?.children.push(element);
      root ??= element;
      if (selfClosed !== '/') open.push(element);
    }
  }
  const stray = text.slice(at).indexOf('<');
  if (stray >= 0) return { at: at + stray, problem: 'this mark begins no tag' };
  const left = open.at(-1);
  if (left) return { at: left.start, problem: `<${left.name}> is not closed` };
  return root ?? { at: 0, problem: 'there is no drawing' };
}

function elementOf(name: string, written: string, start: number, end: number): SvgElement {
  const from = start + 1 + name.length;
  const attributes = [...written.matchAll(attribute)].map((match) => ({
    name: match[1]!,
    value: match[2] ?? match[3] ?? '',
    start: from + match.index,
  }));
  return { name, attributes, children: [], start, end };
}

/** The value of an attribute; undefined where the element has none. */
export function attributeOf({ attributes }: SvgElement, name: string): string | undefined {
  return attributes.find((each) => each.name === name)?.value;
}

/** An element and all below it, in the order of the text. */
export function allElements(element: SvgElement): SvgElement[] {
  return [element, ...element.children.flatMap(allElements)];
}
