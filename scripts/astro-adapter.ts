/*
 * The one place where the compiler meets Astro: a content loader that puts compiled lineages into the store, and an
 * integration that shows findings in the browser's overlay while an author works.
 */
import { sep } from 'node:path';
import type { AstroIntegration } from 'astro';
import type { Loader, LoaderContext } from 'astro/loaders';
import { z } from 'zod';
import { hasErrors, printFindings, type Finding } from './compile/index.ts';
import { contentFolder, isPreview } from './options.ts';
import { shared } from './process-share.ts';
import { compileContent, storeLineage, type CompiledContent, type StoredLineage } from './store.ts';

const entrySchema = z.object({
  id: z.string(),
  languages: z.array(z.string()),
  digest: z.string(),
  path: z.string(),
});

/** Remembers the development server, so that findings reach the browser. */
export function lineageIntegration(): AstroIntegration {
  return {
    name: 'lineament',
    hooks: {
      'astro:server:setup': (options) => {
        shared.server = options.server;
        options.server.ws.on('connection', () => {
          if (shared.standing) showOverlay(shared.standing);
        });
      },
    },
  };
}

/** Loads `lineages`: one entry a folder, pointing to its compiled value. In development it follows the author's files. */
export function lineageLoader(): Loader & { schema: typeof entrySchema } {
  return {
    name: 'lineages',
    schema: entrySchema,
    async load(context) {
      const contentDir = contentFolder();
      await reload(contentDir, context);
      if (context.watcher) follow(contentDir, context);
    },
  };
}

/** `reed-trunks/story.en.mdx` is the story `reed-trunks/en`. */
export function storyId(entry: string): string {
  return entry.replace(/[\\/]story\.([\w-]+)\.mdx$/, '/$1');
}

async function reload(contentDir: string, context: LoaderContext): Promise<void> {
  const { lineages, findings, failed } =
    compiledBefore(contentDir, context) ?? (await compileContent(contentDir, isPreview()));
  const report = printFindings(findings);
  if (hasErrors(findings)) {
    // A build must stop at a mistake; an author at work keeps the last good page and reads what is wrong.
    if (!context.watcher) throw new ContentMistake(findings, report);
    context.logger.error(`keeping the last good pages\n${report}`);
  } else if (report && context.watcher) context.logger.warn(`\n${report}`);
  const stored = await Promise.all(lineages.map(storeLineage));
  fill(context, stored, new Set(failed));
  settle(findings.find((finding) => finding.severity === 'error'));
}

/** What the build that runs us has compiled; in development every look is fresh. */
function compiledBefore(contentDir: string, context: LoaderContext): CompiledContent | undefined {
  return !context.watcher && shared.compiled?.contentDir === contentDir ? shared.compiled.content : undefined;
}

function fill({ store }: LoaderContext, stored: readonly StoredLineage[], keep: ReadonlySet<string>): void {
  const known = new Set(stored.map((entry) => entry.id));
  for (const id of store.keys()) if (!known.has(id) && !keep.has(id)) store.delete(id);
  for (const entry of stored) {
    if (store.get(entry.id)?.digest === entry.digest) continue;
    store.set({ id: entry.id, data: { ...entry }, digest: entry.digest });
  }
}

/** Shows a mistake, or takes the overlay away when the last one is mended. */
function settle(mistake: Finding | undefined): void {
  const wasWrong = shared.standing !== undefined;
  shared.standing = mistake;
  if (mistake) showOverlay(mistake);
  else if (wasWrong) shared.server?.ws.send({ type: 'full-reload' });
}

function showOverlay(finding: Finding): void {
  const { file, line, column } = finding;
  shared.server?.ws.send({
    type: 'error',
    err: {
      name: 'content',
      message: `${finding.file}:${line}:${column}  ${finding.message}`,
      stack: '',
      plugin: 'lineament',
      id: file,
      loc: { file, line, column },
      frame: finding.frame,
    },
  });
}

function follow(contentDir: string, context: LoaderContext): void {
  let waiting: NodeJS.Timeout | undefined;
  const changed = (path: string): void => {
    if (path !== contentDir && !path.startsWith(contentDir + sep)) return;
    clearTimeout(waiting);
    // Editors write a file in several strokes; one compile serves them all.
    waiting = setTimeout(() => {
      reload(contentDir, context).catch((error: unknown) => context.logger.error(String(error)));
    }, 30);
  };
  context.watcher!.add(contentDir);
  // Not chained: only a direct `watcher.on` is undone by Astro when the content configuration changes.
  context.watcher!.on('add', changed);
  context.watcher!.on('change', changed);
  context.watcher!.on('unlink', changed);
}

/** Findings as one error, in the form that Astro prints with hint and place. */
export class ContentMistake extends Error {
  override name = 'ContentMistake';
  readonly hint: string;
  readonly loc: { file: string; line: number; column: number } | undefined;

  constructor(findings: readonly Finding[], report: string) {
    super(report);
    const errors = findings.filter((finding) => finding.severity === 'error');
    const [first] = errors;
    this.hint = `${errors.length} found; nothing was built.`;
    this.loc = first && { file: first.file, line: first.line, column: first.column };
  }
}
