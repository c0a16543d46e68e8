/* The compiler: from a folder of records to one compiled lineage, or to findings that an author can act on. */
export { compileLineage, type CompileOptions, type CompileResult } from './compile-lineage.ts';
export { compileAll } from './compile-all.ts';
export { countFindings, hasErrors, printFinding, printFindings } from './findings/print.ts';
export type { Finding } from './findings/report.ts';
export type { FindingCode, Severity } from './findings/codes.ts';
