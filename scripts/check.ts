/* Checks every lineage of a content folder, or those named, and prints what to mend: `npm run check [-- LINEAGE …] [--json]`. */
import { NoContent } from './compile/compile-all.ts';
import { compileAll, countFindings, hasErrors, printFindings } from './compile/index.ts';
import { readCommandLine } from './options.ts';

const { contentDir, words, flags } = readCommandLine({ json: { type: 'boolean' } });
const startedMs = performance.now();
const results = await checkFolder();
const findings = results.flatMap((result) => result.findings);

if (flags['json']) console.log(JSON.stringify(findings, null, 2));
else {
  if (findings.length > 0) console.log(`${printFindings(findings)}\n`);
  for (const { id, findings: own } of results) console.log(`${id}: ${countFindings(own)}`);
}
if (hasErrors(findings)) process.exitCode = 1;

/** Findings of the lineages asked for; ends the command with 2 where there is no folder, or none of a name. */
async function checkFolder() {
  try {
    const all = await compileAll(contentDir, { checkOnly: true, only: words, onStage: showStage });
    const absent = words.find((word) => !all.some(({ id }) => id === word));
    if (absent === undefined) return all;
    console.error(`unknown lineage: "${absent}" in ${contentDir}`);
  } catch (error) {
    if (!(error instanceof NoContent)) throw error;
    console.error(error.message);
  }
  process.exit(2);
}

/** A check that takes longer than a second says on the error stream what it is at. */
function showStage(stage: string): void {
  if (performance.now() - startedMs > 1000) console.error(`${stage} …`);
}
