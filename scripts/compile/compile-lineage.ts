import { analyseLineage } from './analyse/lineage.ts';
import { checkRecords } from './check/check-records.ts';
import { checkResolved } from './check/check-resolved.ts';
import { checkDrawnShapes } from './check/drawn-shapes.ts';
import type { Showing } from './check/permissions.ts';
import { composeLineage } from './compose/compose.ts';
import { compiledLineage, type CompiledLineage } from './contract.ts';
import { settleDrawings } from './draw/folded-drawings.ts';
import { findTemplates } from './draw/find-templates.ts';
import { openReport, type Finding } from './findings/report.ts';
import { contentDigest } from './read/digest.ts';
import { openFolder } from './read/files.ts';
import { readRecords } from './read/lineage-records.ts';
import { resolveLineage } from './resolve/lineage.ts';

/** What compiling a folder gives: findings, and the compiled lineage where none of them is an error. */
export interface CompileResult {
  compiled?: CompiledLineage;
  findings: Finding[];
}

/** How a lineage is to be shown; left out, it is a public build of today. */
export interface CompileOptions extends Partial<Showing> {
  /** Looks for mistakes alone, in a tenth of the time: nothing is compiled. */
  checkOnly?: boolean;
  /** Told at the beginning of each stage, so that a command can show where a long compile is. */
  onStage?: (stage: Stage) => void;
}

export type Stage = 'reading' | 'checking' | 'computing';

/**
 * Compiles the folder of one lineage: read, check, resolve, analyse, compose. Mistakes of an author come back as
 * findings, all of a run together; an error leaves no compiled value.
 */
export async function compileLineage(path: string, options: CompileOptions = {}): Promise<CompileResult> {
  const report = openReport();
  options.onStage?.('reading');
  const folder = await openFolder(path);
  const records = await readRecords(folder, report);
  options.onStage?.('checking');
  checkRecords(
    records,
    { preview: options.preview ?? false, today: options.today ?? new Date().toISOString().slice(0, 10) },
    report,
  );
  const templates = await findTemplates(path, records, report);
  const lineage = resolveLineage(records, report);
  checkResolved(lineage, report);
  checkDrawnShapes(lineage, templates, report);
  // What is computed from wrong records would only add to the noise.
  if (report.hasErrors() || !records.lineage) return { findings: report.list() };
  options.onStage?.('computing');
  const analysed = analyseLineage(
    records.lineage.value,
    lineage,
    report,
    options.checkOnly ? 'check' : 'whole',
  );
  if (report.hasErrors() || options.checkOnly) return { findings: report.list() };
  const digest = await contentDigest(folder);
  const composed = composeLineage(records.lineage.value, digest, analysed, {
    preview: options.preview ?? false,
    templates,
  });
  const drawings = settleDrawings(composed.drawings, templates, lineage, report);
  const compiled = compiledLineage.parse({ ...composed, drawings });
  return { compiled, findings: report.list() };
}
