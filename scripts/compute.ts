/* Prints a compiled lineage as JSON: `npm run --silent compute -- LINEAGE`. */
import { join } from 'node:path';
import { compileLineage, printFindings } from './compile/index.ts';
import { lineageIds } from './compile/compile-all.ts';
import { readCommandLine } from './options.ts';

const { contentDir, words } = readCommandLine();
const known = await lineageIds(contentDir);
const [id] = words;
if (id === undefined || !known.includes(id)) {
  console.error(
    `${id === undefined ? 'no lineage named' : `unknown lineage: "${id}"`}; there are: ${known.join(', ') || 'none'}`,
  );
  process.exit(2);
}
const { compiled, findings } = await compileLineage(join(contentDir, id));
if (findings.length > 0) console.error(printFindings(findings));
if (compiled) console.log(JSON.stringify(compiled, null, 2));
else process.exitCode = 1;
