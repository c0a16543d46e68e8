/* Prints a compiled lineage as JSON: `npm run --silent compute -- LINEAGE`. */
import { join } from 'node:path';
import { lineageIds, NoContent } from './compile/compile-all.ts';
import { didYouMean } from './compile/findings/suggest.ts';
import { compileLineage, printFindings } from './compile/index.ts';
import { readCommandLine } from './options.ts';

const { contentDir, words } = readCommandLine();
const id = await chosenLineage(words[0]);
const { compiled, findings } = await compileLineage(join(contentDir, id));
if (findings.length > 0) console.error(printFindings(findings));
if (compiled) console.log(JSON.stringify(compiled, null, 2));
else process.exitCode = 1;

/** The lineage that was asked for; ends the command with 2 where there is none of that name. */
async function chosenLineage(asked: string | undefined): Promise<string> {
  const known = await lineageIds(contentDir).catch((error: unknown) => {
    if (!(error instanceof NoContent)) throw error;
    console.error(error.message);
    process.exit(2);
  });
  if (asked !== undefined && known.includes(asked)) return asked;
  const problem =
    asked === undefined
      ? 'no lineage is named;'
      : `unknown lineage: "${asked}"${didYouMean(asked, known) || ';'}`;
  console.error(`${problem} there are: ${known.join(', ') || 'none'}`);
  process.exit(2);
}
