import { drawingAttributes, drawingElements, styleDeclarations } from './drawn-only.ts';
import type { SvgElement } from './svg-tags.ts';

/** Values that say the same in every room: black ink and white paper become classes, which follow the room. */
const dark =
  /^(?:#000(?:000)?|#1[0-9a-f]1[0-9a-f]1[0-9a-f]|black|currentcolor|rgb\(\s*0\s*,\s*0\s*,\s*0\s*\))$/i;
const light = /^(?:#fff(?:fff)?|white|rgb\(\s*255\s*,\s*255\s*,\s*255\s*\))$/i;

/**
 * An element that is known to be inert as markup with nothing but shapes and their attributes; its ids, and what refers to
 * them, begin with `prefix`. Black and white carry a class beside their colour. Empty for what only an author's program reads.
 */
export function plainMarkup(element: SvgElement, prefix: string): string {
  const name = element.name.replace(/^svg:/, '');
  if (!drawingElements.has(name)) return '';
  const attributes = new Map(
    element.attributes.flatMap(({ name: own, value }): [string, string][] =>
      own === 'style' ? styleDeclarations(value) : drawingAttributes.has(own) ? [[own, value]] : [],
    ),
  );
  const classes = ['fill', 'stroke'].flatMap((key) => roomClass(key, attributes.get(key) ?? ''));
  const written = [...attributes].map(
    ([key, value]) => ` ${key}="${escapeValue(ownIds(key, value, prefix))}"`,
  );
  if (classes.length > 0) written.push(` class="${classes.join(' ')}"`);
  const inner = element.children.map((child) => plainMarkup(child, prefix)).join('');
  return `<${name}${written.join('')}>${inner}</${name}>`;
}

function roomClass(key: string, value: string): string[] {
  if (dark.test(value.trim())) return [`own-${key}-ink`];
  return light.test(value.trim()) ? [`own-${key}-paper`] : [];
}

function ownIds(key: string, value: string, prefix: string): string {
  if (key === 'id') return prefix + value;
  if (key === 'href' || key === 'xlink:href') return value.replace(/^\s*#/, `#${prefix}`);
  return value.replace(/url\(\s*["']?\s*#([^)"'\s]+)["']?\s*\)/g, `url(#${prefix}$1)`);
}

function escapeValue(value: string): string {
  // Entities that XML knows stay as they are written; a name of the author's own would break the page.
  const known = /&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[0-9a-f]+);)/gi;
  return value.replace(known, '&amp;').replace(/"/g, '&quot;').replace(/</g, '&lt;');
}
