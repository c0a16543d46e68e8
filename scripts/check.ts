/* Checks every lineage of a content folder and prints what an author should mend: `npm run check`. */
import { compileAll, countFindings, hasErrors, printFindings } from './compile/index.ts';
import { readCommandLine } from './options.ts';

const { contentDir, words, flags } = readCommandLine({ json: { type: 'boolean' } });
const results = (await compileAll(contentDir, { checkOnly: true })).filter(
  ({ id }) => words.length === 0 || words.includes(id),
);
const findings = results.flatMap((result) => result.findings);

if (flags['json']) console.log(JSON.stringify(findings, null, 2));
else {
  if (findings.length > 0) console.log(`${printFindings(findings)}\n`);
  for (const { id, findings: own } of results) console.log(`${id}: ${countFindings(own)}`);
}
if (hasErrors(findings)) process.exitCode = 1;
