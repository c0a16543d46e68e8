import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

/** The folder of the project, with a slash at its end. */
export const projectRoot = fileURLToPath(new URL('../', import.meta.url));

/** What the person typed: words, and options that every command shares. */
export interface CommandLine {
  words: string[];
  contentDir: string;
  flags: Record<string, string | boolean | undefined>;
}

type OptionTypes = Record<string, { type: 'string' | 'boolean' }>;

/**
 * Reads the command line. `--content DIR` (or LINEAMENT_CONTENT) is taken relative to where the person stands,
 * not to the project; without it the lineages that come with the tool are used. Exits with code 2 on an unknown option.
 */
export function readCommandLine(extra: OptionTypes = {}): CommandLine {
  try {
    const { values, positionals } = parseArgs({
      options: { content: { type: 'string' }, ...extra },
      allowPositionals: true,
    });
    return {
      words: positionals,
      contentDir: contentFolder(values['content'] as string | undefined),
      flags: values,
    };
  } catch (error) {
    console.error((error as Error).message);
    process.exit(2);
  }
}

/** The folder that holds the lineages, absolute. */
export function contentFolder(given: string | undefined = undefined): string {
  const standing = process.env['INIT_CWD'] ?? process.cwd();
  const chosen = given ?? process.env['LINEAMENT_CONTENT'];
  return chosen ? resolve(standing, chosen) : resolve(projectRoot, 'content');
}

/** Whether pages may show what is not for publication yet, under a stamp: `npm start -- --preview`. */
export function isPreview(): boolean {
  return process.env['LINEAMENT_PREVIEW'] === 'yes';
}
