import { didYouMean } from '../../findings/suggest.ts';
import type { Report } from '../../findings/report.ts';
import type { SourceText } from '../../source/source-text.ts';
import type { Known } from '../known.ts';
import { checkComponent } from './check-component.ts';
import { parseStory, spanOf, type StoryNode } from './parse-story.ts';
import { checkProse, type ProseRules } from './check-prose.ts';

/** Checks one story: its syntax, its components, and its prose. */
export function checkStory(
  source: SourceText,
  known: Known,
  rules: ProseRules,
  pictures: ReadonlySet<string>,
  report: Report,
): void {
  const tree = parseStory(source, report);
  if (tree) visit(tree, { source, known, rules, pictures, report });
}

interface Context {
  source: SourceText;
  known: Known;
  rules: ProseRules;
  /** Files of the pictures that specimens record, with their texts and rights. */
  pictures: ReadonlySet<string>;
  report: Report;
}

const silent = new Set(['inlineCode', 'code', 'definition', 'footnoteReference', 'footnoteDefinition']);

function visit(node: StoryNode, context: Context): void {
  const { source, known, rules, report } = context;
  if (silent.has(node.type)) return;
  if (node.type === 'mdxjsEsm') {
    report.add(
      'story-component',
      spanOf(source, node),
      'a story imports and exports nothing',
      'remove the line: the components are at hand without it',
    );
    return;
  }
  if (node.type === 'mdxFlowExpression' || node.type === 'mdxTextExpression') {
    checkExpression(node, context);
    return;
  }
  if (node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement') {
    checkComponent(node, source, known, report);
    if (node.name === 'Plain') return;
    if (node.name === 'Step') checkStep(node, context);
  }
  if (node.type === 'text') checkProse(node.value ?? '', spanOf(source, node), rules, report);
  if (node.type === 'image' || node.type === 'link') {
    for (const text of [node.alt, node.title])
      if (text) checkProse(text, spanOf(source, node), rules, report);
  }
  if (node.type === 'image') checkImage(node, context);
  for (const child of node.children ?? []) visit(child, context);
}

/** Comments may stand in braces; anything else would be code that places text unseen. */
function checkExpression(node: StoryNode, { source, report }: Context): void {
  const code = (node.value ?? '').replaceAll(/\/\*[\s\S]*?\*\//g, '').trim();
  if (code !== '')
    report.add(
      'story-component',
      spanOf(source, node),
      'code in braces',
      'write the text itself, or place a number with <Value>, <Age> or <Count>',
    );
}

function checkStep(node: StoryNode, { source, report }: Context): void {
  const first = node.children?.find((child) => !/Expression$/.test(child.type));
  if (first?.type === 'heading' && first.depth === 2) return;
  const span = spanOf(source, node);
  report.add(
    'story-heading',
    { ...span, end: span.start + 5 },
    'a step does not begin with a heading',
    'write a line "## …" first inside <Step>, after an empty line',
  );
}

/** A picture in a story is one that a specimen records: only there does it have rights and a text in every language. */
function checkImage({ url = '', position }: StoryNode, { source, pictures, report }: Context): void {
  if (pictures.has(url.replace(/^\.\//, ''))) return;
  report.add(
    'picture-rights',
    spanOf(source, { position }),
    `the picture "${url}" is recorded with no specimen${didYouMean(url, pictures)}`,
    'list it under pictures of its specimen, with alt and rights, and name it by the same path',
  );
}
