import type { Finding } from './report.ts';

/** One finding as lines for a terminal: place, what is wrong, the line with carets, what to do. */
export function printFinding(finding: Finding): string {
  const { file, line, column, severity, code, frame, message, advice } = finding;
  const indented = frame.replaceAll(/^/gm, '    ');
  return `${file}:${line}:${column}  ${severity}: ${message}  [${code}]\n${indented}\n    ${advice}`;
}

/** How many of each, in words: ‘2 errors, 1 warning’; ‘nothing found’ for an empty list. */
export function countFindings(findings: readonly Finding[]): string {
  const errors = findings.filter((finding) => finding.severity === 'error').length;
  const warnings = findings.length - errors;
  const parts = [counted(errors, 'error'), counted(warnings, 'warning')].filter((part) => part !== '');
  return parts.join(', ') || 'nothing found';
}

function counted(count: number, word: string): string {
  if (count === 0) return '';
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

/** All findings for a terminal, one paragraph each; empty when there are none. */
export function printFindings(findings: readonly Finding[]): string {
  return findings.map(printFinding).join('\n\n');
}

/** Whether a list of findings stops a compile. */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === 'error');
}
