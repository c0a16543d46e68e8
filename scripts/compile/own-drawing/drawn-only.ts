/** Elements that only draw, or hold what does. */
export const drawingElements: ReadonlySet<string> = new Set([
  'svg',
  'g',
  'path',
  'circle',
  'ellipse',
  'rect',
  'line',
  'polyline',
  'polygon',
  'defs',
  'clipPath',
  'linearGradient',
  'radialGradient',
  'stop',
]);

/** Elements that say something of the drawing and draw nothing: they are left out. */
export const silentElements: ReadonlySet<string> = new Set(['title', 'desc', 'metadata']);

/** Attributes that place, shape or colour. All others are left out. */
export const drawingAttributes: ReadonlySet<string> = new Set([
  'id',
  'd',
  'points',
  'x',
  'y',
  'x1',
  'y1',
  'x2',
  'y2',
  'cx',
  'cy',
  'r',
  'rx',
  'ry',
  'fx',
  'fy',
  'width',
  'height',
  'offset',
  'transform',
  'gradientUnits',
  'gradientTransform',
  'spreadMethod',
  'clipPathUnits',
  'clip-path',
  'clip-rule',
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-miterlimit',
  'stroke-dasharray',
  'stroke-dashoffset',
  'stroke-opacity',
  'stop-color',
  'stop-opacity',
  'opacity',
  'display',
  'visibility',
  'href',
  'xlink:href',
]);

/** Declarations of a `style` attribute that have an attribute of the same name; the others are left out. */
export function styleDeclarations(style: string): [string, string][] {
  return style.split(';').flatMap((declaration): [string, string][] => {
    const [name = '', ...rest] = declaration.split(':');
    const value = rest.join(':').trim();
    return drawingAttributes.has(name.trim()) && value !== '' ? [[name.trim(), value]] : [];
  });
}
