import { coordinate, fineCoordinate, type Mark, type Scene, type Shape, type TextRun } from './scene.ts';

export interface SvgWords {
  /** Short name of the figure. */
  title: string;
  /** What it shows, with the counts of each status. */
  description: string;
  /** The datum that is in focus before any script runs. */
  focus?: string | undefined;
}

/**
 * A scene as an SVG image with a name and a description. Roles become classes, data become `data-of`; there is no
 * `style` attribute and no inner style sheet, because the content policy of the pages forbids both.
 */
export function sceneToSvg(scene: Scene, id: string, className: string, words: SvgWords): string {
  const [titleId, descriptionId] = [`${id}-title`, `${id}-description`];
  return [
    `<svg id="${id}" class="${className}" viewBox="0 0 ${coordinate(scene.width)} ${coordinate(scene.height)}" role="img" aria-labelledby="${titleId} ${descriptionId}">`,
    `<title id="${titleId}">${escapeText(words.title)}</title><desc id="${descriptionId}">${escapeText(words.description)}</desc>`,
    groups(scene.marks)
      .map((group) => groupToSvg(group, words.focus))
      .join(''),
    '</svg>',
  ].join('');
}

/** A scene that only repeats what stands elsewhere in words, such as an axis whose figure tells its ages. */
export function hiddenSvg(scene: Scene, className: string): string {
  const marks = scene.marks.map(({ shape, role }) => shapeToSvg(shape, role)).join('');
  return `<svg class="${className}" viewBox="0 0 ${coordinate(scene.width)} ${coordinate(scene.height)}" aria-hidden="true" focusable="false">${marks}</svg>`;
}

interface Group {
  layer: string;
  datum: string | undefined;
  marks: Mark[];
}

/** Runs of marks of one layer and one datum. */
function groups(marks: readonly Mark[]): Group[] {
  const list: Group[] = [];
  for (const mark of marks) {
    const last = list.at(-1);
    if (last && last.layer === mark.layer && last.datum === mark.datum) last.marks.push(mark);
    else list.push({ layer: mark.layer, datum: mark.datum, marks: [mark] });
  }
  return list;
}

function groupToSvg({ layer, datum, marks }: Group, focus: string | undefined): string {
  const of = datum === undefined ? '' : ` data-of="${escapeText(datum)}"`;
  const lit = datum !== undefined && datum === focus ? ' in-focus near-focus' : '';
  return `<g class="layer-${layer}${lit}"${of}>${marks.map((mark) => shapeToSvg(mark.shape, mark.role)).join('')}</g>`;
}

/** One shape with its class. */
export function shapeToSvg(shape: Shape, role: string): string {
  const c = coordinate;
  switch (shape.kind) {
    case 'path':
      return `<path class="${role}"${shape.dashes ? ` stroke-dasharray="${shape.dashes}"` : ''} d="${shape.d}"/>`;
    case 'rect':
      return `<rect class="${role}" x="${c(shape.x)}" y="${c(shape.y)}" width="${c(shape.width)}" height="${c(shape.height)}"/>`;
    case 'circle':
      return `<circle class="${role}" cx="${c(shape.x)}" cy="${c(shape.y)}" r="${c(shape.radius)}"/>`;
    case 'picture':
      return pictureToSvg(shape, role);
    case 'use':
      return `<use class="${role}" href="#${escapeText(shape.target)}" transform="translate(${c(shape.x)} ${c(shape.y)}) scale(${scaleText(shape)})"/>`;
    case 'text':
      return textToSvg(shape, role);
  }
}

/**
 * A picture as an HTML image, because only that waits until it is to be seen: a plate that a screen does not show fetches none.
 * Its name stands beside it as text.
 */
function pictureToSvg(shape: Extract<Shape, { kind: 'picture' }>, role: string): string {
  const [x, y, width, height] = [shape.x, shape.y, shape.width, shape.height].map(coordinate);
  return `<foreignObject x="${x}" y="${y}" width="${width}" height="${height}"><img xmlns="http://www.w3.org/1999/xhtml" class="${role}" src="${escapeText(shape.href)}" width="${width}" height="${height}" alt="" loading="lazy" decoding="async"/></foreignObject>`;
}

/** One factor, or two where a shape is longer along x. */
function scaleText({ scale, stretch }: Extract<Shape, { kind: 'use' }>): string {
  if (stretch === undefined) return fineCoordinate(scale);
  // Two decimals of a factor would move the far end of a drawing by half a pixel.
  return [scale * stretch, scale].map((factor) => Number(factor.toFixed(4))).join(' ');
}

function textToSvg(shape: Extract<Shape, { kind: 'text' }>, role: string): string {
  const place = shape.turned
    ? `transform="translate(${coordinate(shape.x)} ${coordinate(shape.y)}) rotate(-90)" dy=".34em"`
    : `x="${coordinate(shape.x)}" y="${coordinate(shape.y)}"`;
  return `<text class="${role}" ${place} font-size="${coordinate(shape.size)}" text-anchor="${shape.anchor}">${shape.runs.map(runToSvg).join('')}</text>`;
}

function runToSvg(run: TextRun): string {
  if (run.voice === 'name') return `<tspan class="name" lang="la">${escapeText(run.text)}</tspan>`;
  if (run.voice === 'strong') return `<tspan class="strong">${escapeText(run.text)}</tspan>`;
  return escapeText(run.text);
}

/** Text made safe for markup. */
export function escapeText(content: string): string {
  return content.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign]!,
  );
}
