/** SPDX identifiers of licences that pictures and records are commonly shared under (SPDX licence list; from memory). */
export const licenceIds: ReadonlySet<string> = new Set([
  'CC0-1.0',
  'CC-PDDC',
  'PDDL-1.0',
  'ODC-By-1.0',
  'ODbL-1.0',
  'MIT',
  'Apache-2.0',
  'OGL-UK-3.0',
  'etalab-2.0',
  ...['BY', 'BY-SA', 'BY-NC', 'BY-NC-SA', 'BY-ND', 'BY-NC-ND'].flatMap((terms) =>
    ['1.0', '2.0', '2.5', '3.0', '4.0'].map((version) => `CC-${terms}-${version}`),
  ),
]);

/** True for an SPDX identifier of the list above, one of the author's own (`LicenseRef-…`), or the address of a licence. */
export function isLicence(text: string): boolean {
  return licenceIds.has(text) || /^LicenseRef-[A-Za-z0-9.-]+$/.test(text) || /^https?:\/\/\S+$/.test(text);
}
