import remarkGfm from 'remark-gfm';
import remarkMdx from 'remark-mdx';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { Report } from '../../findings/report.ts';
import { rememberLast } from '../../source/remember.ts';
import type { SourceText, Span } from '../../source/source-text.ts';

/** One node of a story's syntax tree, as far as checks look at it. */
export interface StoryNode {
  type: string;
  value?: string;
  name?: string | null;
  depth?: number;
  url?: string;
  alt?: string | null;
  title?: string | null;
  attributes?: StoryAttribute[];
  children?: StoryNode[];
  position?: { start: { offset?: number }; end: { offset?: number } };
}

/** One attribute of a component in a story; a value that is not plain text is an object. */
export interface StoryAttribute {
  type: string;
  name?: string;
  value?: string | null | { value: string };
  position?: StoryNode['position'];
}

/** Parses a story (Markdown with components). A syntax error is reported at its place and nothing is returned. */
export const parseStory = rememberLast(
  20,
  ({ file, text }: SourceText, _report: Report) => `${file}\0${text}`,
  parseAfresh,
);

function parseAfresh(source: SourceText, report: Report): StoryNode | undefined {
  try {
    return unified().use(remarkParse).use(remarkMdx).use(remarkGfm).parse(source.text) as StoryNode; // the tree has all of these fields
  } catch (error) {
    const { reason, message, place } = error as { reason?: string; message: string; place?: unknown }; // a message of the parser
    const start = offsetOf(place) ?? 0;
    report.add(
      'story-syntax',
      { source, start, end: start + 1 },
      `the story cannot be read: ${plain(reason ?? message)}`,
      'close every component, and write < and { as &lt; and &#123; where they are meant as characters',
    );
    return undefined;
  }
}

function plain(reason: string): string {
  const first = reason.split('\n')[0]!.replace(/\.$/, '');
  return first.charAt(0).toLowerCase() + first.slice(1);
}

function offsetOf(place: unknown): number | undefined {
  if (place === null || typeof place !== 'object') return undefined;
  const { offset, start } = place as { offset?: number; start?: { offset?: number } }; // a point or a range
  return offset ?? start?.offset;
}

/** Span of a node; nodes without a position are taken as the start of the file. */
export function spanOf(source: SourceText, node: { position?: StoryNode['position'] }): Span {
  const start = node.position?.start.offset ?? 0;
  return { source, start, end: node.position?.end.offset ?? start + 1 };
}
