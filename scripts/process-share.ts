import type { ViteDevServer } from 'vite';
import type { Finding } from './compile/index.ts';
import type { CompiledContent } from './store.ts';

/**
 * What the parts of one process share. Astro loads our modules more than once (for the command, for its configuration, for
 * the content collections), so this hangs on the process and not on a module.
 */
export interface ProcessShare {
  server?: ViteDevServer;
  /** The mistake that stands in the content now; shown again to every page that connects. */
  standing?: Finding | undefined;
  /** What a build has compiled already, so that its pages need not compile it again. */
  compiled?: { contentDir: string; content: CompiledContent };
}

const key = Symbol.for('lineament');

export const shared: ProcessShare = ((globalThis as { [key]?: ProcessShare })[key] ??= {});
