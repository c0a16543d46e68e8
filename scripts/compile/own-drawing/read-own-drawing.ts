import type { PlanePoint } from '../../../analysis/geometry/plane.ts';
import type { Report } from '../findings/report.ts';
import type { SourceText } from '../source/source-text.ts';
import { checkInert } from './check-inert.ts';
import { plainMarkup } from './plain-markup.ts';
import { allElements, attributeOf, readSvg, type SvgElement } from './svg-tags.ts';

/** An author's drawing, made safe: its groups as markup in its own units, and where it marks landmarks. */
export interface OwnDrawing {
  bone: string;
  restored: string;
  /** The anatomy of the trait, which carries the accent. */
  accent: string;
  landmarks: Map<string, PlanePoint>;
}

/** So many characters are read; a drawing with more would make pages slow. */
const mostCharacters = 400_000;

/**
 * Reads a drawing: `bone` is needed, `restored` and `accent` may be there, and small circles in `landmarks` say where
 * landmarks lie. Undefined after findings where it is not well-formed, not inert, or lacks its groups.
 */
export function readOwnDrawing(
  source: SourceText,
  known: ReadonlySet<string>,
  prefix: string,
  report: Report,
): OwnDrawing | undefined {
  const { text } = source;
  const refuse = (start: number, end: number, problem: string, advice: string): undefined => {
    report.add('drawing-shape', { source, start, end }, problem, advice);
  };
  if (text.length > mostCharacters)
    return refuse(
      0,
      1,
      `the drawing has ${text.length} characters; at most ${mostCharacters} are read`,
      'simplify its lines, and take embedded pictures out',
    );
  const root = readSvg(text);
  if ('problem' in root)
    return refuse(
      root.at,
      root.at + 1,
      `the drawing is not well-formed: ${root.problem}`,
      'save it again as SVG',
    );
  if (!checkInert(root, source, report)) return undefined;
  const find = (id: string) => allElements(root).find((each) => attributeOf(each, 'id') === id);
  const bone = find('bone');
  const marks = find('landmarks');
  if (!bone || !marks)
    return refuse(
      root.start,
      root.end,
      `the drawing has no group with the id "${bone ? 'landmarks' : 'bone'}"`,
      'name its groups bone, restored, accent and landmarks; the first and the last are needed',
    );
  const landmarks = marksOf(marks, root, source, known, report);
  if (landmarks.size < 2) return undefined;
  const plain = (element: SvgElement | undefined) => (element ? plainMarkup(element, prefix) : '');
  const defs = root.children.filter(({ name }) => name === 'defs').map(plain);
  return {
    bone: defs.join('') + plain(bone),
    restored: plain(find('restored')),
    accent: plain(find('accent')),
    landmarks,
  };
}

/** Middles of the circles in the group, by their ids. They are read as they stand, so nothing above them may move them. */
function marksOf(
  group: SvgElement,
  root: SvgElement,
  source: SourceText,
  known: ReadonlySet<string>,
  report: Report,
): Map<string, PlanePoint> {
  const found = new Map<string, PlanePoint>();
  const problem = (element: SvgElement, message: string, advice: string) =>
    report.add('drawing-shape', { source, start: element.start, end: element.end }, message, advice);
  for (const moved of [...pathTo(root, group), ...group.children]) {
    if (attributeOf(moved, 'transform') !== undefined)
      problem(moved, 'something moves the landmarks of the drawing', 'save it with the movements applied');
  }
  for (const circle of group.children) {
    const id = attributeOf(circle, 'id') ?? '';
    const at: PlanePoint = [Number(attributeOf(circle, 'cx')), Number(attributeOf(circle, 'cy'))];
    if (!at.every(Number.isFinite))
      problem(
        circle,
        `"${id}" has no middle`,
        'mark a landmark by a circle with cx, cy and the id of the landmark',
      );
    else if (!known.has(id))
      problem(
        circle,
        `unknown landmark in the drawing: "${id}"`,
        'give the circle the id of a landmark of scheme.yaml',
      );
    else found.set(id, at);
  }
  if (found.size < 2)
    problem(
      group,
      `the drawing marks ${found.size} landmarks; two are needed`,
      'mark the two ends of the measured line',
    );
  return found;
}

/** The elements from the root down to one, that one with them. */
function pathTo(root: SvgElement, wanted: SvgElement): SvgElement[] {
  if (root === wanted) return [root];
  for (const child of root.children) {
    const rest = pathTo(child, wanted);
    if (rest.length > 0) return [root, ...rest];
  }
  return [];
}
