import { didYouMean } from '../../findings/suggest.ts';
import type { Report } from '../../findings/report.ts';
import type { SourceText, Span } from '../../source/source-text.ts';
import { expectId } from '../expect-id.ts';
import type { Known } from '../known.ts';
import { counted, levelFacts, sectionFacts, shown, storyComponents, type PropKind } from './components.ts';
import { spanOf, type StoryAttribute, type StoryNode } from './parse-story.ts';

/** Checks one component of a story: its name, its attributes, and that its ids lead somewhere. */
export function checkComponent(node: StoryNode, source: SourceText, known: Known, report: Report): void {
  const name = node.name ?? '';
  const component = Object.hasOwn(storyComponents, name) ? storyComponents[name]! : undefined;
  const span = tagSpan(node, source);
  if (!component) {
    const names = Object.keys(storyComponents);
    report.add(
      'story-component',
      span,
      name === '' ? 'a component has no name' : `unknown component <${name}>${didYouMean(name, names)}`,
      `stories use ${names.join(', ')}; everything else is Markdown`,
    );
    return;
  }
  const given = new Set<string>();
  for (const attribute of node.attributes ?? []) {
    checkAttribute(name, attribute, component.props, { source, known, report }, span);
    given.add(attribute.name ?? '');
  }
  for (const prop of component.required) {
    if (!given.has(prop))
      report.add('story-component', span, `<${name}> has no ${prop}`, `write <${name} ${prop}="…">`);
  }
}

function tagSpan(node: StoryNode, source: SourceText): Span {
  const span = spanOf(source, node);
  return { ...span, end: Math.min(span.end, span.start + 1 + (node.name?.length ?? 0)) };
}

interface Context {
  source: SourceText;
  known: Known;
  report: Report;
}

function checkAttribute(
  component: string,
  attribute: StoryAttribute,
  props: Readonly<Record<string, PropKind>>,
  context: Context,
  tag: Span,
): void {
  const span = attribute.position ? spanOf(context.source, attribute) : tag;
  const refuse = (problem: string, advice: string) =>
    context.report.add('story-component', span, problem, advice);
  if (attribute.name === undefined || (attribute.value !== null && typeof attribute.value === 'object')) {
    refuse(`an attribute of <${component}> is code`, 'write a plain text between quotation marks');
    return;
  }
  const kind = Object.hasOwn(props, attribute.name) ? props[attribute.name]! : undefined;
  if (kind === undefined) {
    const names = Object.keys(props);
    refuse(
      `<${component}> has no attribute ${attribute.name}${didYouMean(attribute.name, names)}`,
      names.length === 0 ? 'remove it' : `it has ${names.join(', ')}`,
    );
  } else if (kind === 'flag') {
    if (typeof attribute.value === 'string')
      refuse(`${attribute.name} takes no value`, `write ${attribute.name} alone`);
  } else if (typeof attribute.value !== 'string' || attribute.value.trim() === '') {
    refuse(`${attribute.name} is empty`, `give it a value: ${attribute.name}="…"`);
  } else checkValue(kind, attribute.name, attribute.value, span, context);
}

function checkValue(
  kind: Exclude<PropKind, 'flag'>,
  name: string,
  value: string,
  span: Span,
  { known, report }: Context,
): void {
  const oneOf = (words: readonly string[]) => {
    if (!words.includes(value))
      report.add(
        'story-component',
        span,
        `unknown ${name}: "${value}"${didYouMean(value, words)}`,
        `choose one of: ${words.join(', ')}`,
      );
  };
  if (kind === 'taxon') expectId('taxon', value, known.taxon, span, report);
  else if (kind === 'trait') expectId('trait', value, known.trait, span, report);
  else if (kind === 'term') expectId('term', value, known.term, span, report);
  else if (kind === 'dated') {
    if (!known.horizon.has(value)) expectId('taxon', value, known.taxon, span, report);
  } else if (kind === 'show') oneOf(shown);
  else if (kind === 'counted') oneOf(counted);
  else if (kind === 'level') expectId('level', value, known.level, span, report);
  else if (kind === 'levelFact') oneOf(levelFacts);
  else if (kind === 'sectionFact') oneOf(sectionFacts);
  else if (kind === 'number') {
    if (!/^\d+(\.\d+)?$/.test(value))
      report.add(
        'story-component',
        span,
        `${name} is "${value}"`,
        'give an age in millions of years, such as age="32"',
      );
  } else checkFocus(value, span, known, report);
}

/**
 * `focus` names taxa or levels of the section, separated by spaces, the smallest clade that holds two or more (`clade:a+b`), or the branch that leads to
 * one or to what several share (`branch:a`, `branch:a+b`).
 */
function checkFocus(value: string, span: Span, known: Known, report: Report): void {
  for (const part of value.trim().split(/\s+/)) {
    const members = part.replace(/^(clade|branch):/, '').split('+');
    if (part.startsWith('clade:') && members.length < 2)
      report.add('story-component', span, `"${part}" names one member`, 'write clade:one+other');
    for (const id of members) if (!known.level.has(id)) expectId('taxon', id, known.taxon, span, report);
  }
}
