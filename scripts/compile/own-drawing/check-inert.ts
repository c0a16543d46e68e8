import type { Report } from '../findings/report.ts';
import type { SourceText } from '../source/source-text.ts';
import { drawingElements, silentElements } from './drawn-only.ts';
import { allElements, type SvgAttribute, type SvgElement } from './svg-tags.ts';

/** Why an element may not stand in a drawing, and what to do instead. */
const refused: Readonly<Record<string, readonly [why: string, advice: string]>> = {
  script: ['could run', 'take it out: a drawing is lines and areas'],
  foreignObject: ['could hold anything', 'take it out: a drawing is lines and areas'],
  animate: ['would move by itself', 'take it out: what moves cannot be compared'],
  animateMotion: ['would move by itself', 'take it out: what moves cannot be compared'],
  animateTransform: ['would move by itself', 'take it out: what moves cannot be compared'],
  set: ['would change by itself', 'take it out: what moves cannot be compared'],
  a: ['leads elsewhere', 'take the link away and keep what is in it'],
  image: ['brings another picture', 'list photographs under pictures of the specimen'],
  use: ['repeats another part', 'save the drawing with its copies written out'],
  style: ['is a sheet of styles, which pages do not take', 'save the drawing with attributes in its shapes'],
  text: ['is set in letters, which need a face', 'turn letters into outlines, or leave them to the caption'],
};

/** A drawing only draws: what could run, reach out, or move by itself is reported at its line. True where it is inert. */
export function checkInert(root: SvgElement, source: SourceText, report: Report): boolean {
  let inert = true;
  const refuse = (start: number, end: number, message: string, advice: string) => {
    report.add('active-drawing', { source, start, end }, message, advice);
    inert = false;
  };
  for (const element of allElements(root)) {
    const name = element.name.replace(/^svg:/, '');
    if (!drawingElements.has(name) && !silentElements.has(name) && !isForeign(name)) {
      const [why, advice] = refused[name] ?? ['is no line and no area', 'save the drawing with plain shapes'];
      refuse(element.start, element.end, `<${element.name}> may not stand in a drawing: it ${why}`, advice);
    }
    for (const attribute of element.attributes) {
      const reason = reasonAgainst(attribute);
      if (reason === undefined) continue;
      const end = attribute.start + attribute.name.length;
      refuse(
        attribute.start,
        end,
        `"${attribute.name}" of <${element.name}> ${reason}`,
        'take the attribute out: a drawing is lines and areas',
      );
    }
  }
  return inert;
}

/** Notes that drawing programs keep under names of their own; script under another name is script all the same. */
function isForeign(name: string): boolean {
  return name.includes(':') && !(name.split(':').at(-1)! in refused);
}

function reasonAgainst({ name, value }: SvgAttribute): string | undefined {
  if (/^on/i.test(name)) return 'could run';
  if (/^(?:xlink:)?href$|^src$/i.test(name) && !/^\s*#/.test(value)) return 'reaches out of the drawing';
  if (/url\(\s*["']?\s*(?!#)[^)\s"']/i.test(value)) return 'reaches out of the drawing';
  if (/javascript\s*:|expression\s*\(|@import/i.test(value)) return 'could run';
  return undefined;
}
