import { describe, expect, it } from 'vitest';
import { printReferences } from '../../scripts/compile/compose/references.ts';
import { openReport } from '../../scripts/compile/findings/report.ts';
import { readReferences } from '../../scripts/compile/read/references.ts';
import { sourceText } from '../../scripts/compile/source/source-text.ts';

function printed(bibtex: string) {
  const report = openReport();
  const references = readReferences(sourceText('references.bib', bibtex), report) ?? [];
  return { lines: printReferences(references), findings: report.list() };
}

/*
 * The fourteen entry types and their required fields: Patashnik 1988, BibTeXing, section 3.1 (from memory), filled with
 * invented works.
 */
const everyType = `
@article{article, author={Heath, Bo}, title={An Article}, journal={Invented Notes}, year=1988, volume=2, number=3, pages={4--7}}
@book{book, author={Heath, Bo}, title={A Book}, publisher={Gorse Press}, year=1989}
@booklet{booklet, title={A Booklet}, author={Heath, Bo}, year=1990}
@conference{conference, author={Heath, Bo}, title={A Talk}, booktitle={Talks}, year=1991}
@inbook{inbook, author={Heath, Bo}, title={A Book}, chapter=2, pages={10--20}, publisher={Gorse Press}, year=1992}
@incollection{incollection, author={Heath, Bo}, title={A Chapter}, booktitle={Chapters}, publisher={Gorse Press}, year=1993, pages={1--9}}
@inproceedings{inproceedings, author={Heath, Bo}, title={A Talk}, booktitle={Talks}, year=1994}
@manual{manual, title={A Manual}, organization={Shelf Society}, year=1995}
@mastersthesis{mastersthesis, author={Heath, Bo}, title={A Thesis}, school={Heath College}, year=1996}
@misc{misc, author={Heath, Bo}, title={A Thing}, year=1997}
@phdthesis{phdthesis, author={Heath, Bo}, title={A Thesis}, school={Heath College}, year=1998}
@proceedings{proceedings, title={Talks}, editor={Hopper, Ann}, year=1999}
@techreport{techreport, author={Heath, Bo}, title={A Report}, institution={Shelf Survey}, year=2000}
@unpublished{unpublished, author={Heath, Bo}, title={Papers}, note={Kept at the Shelf Society}, year=2001}
`;

describe('printReferences', () => {
  it('prints every entry type of the BibTeX manual with its people, year and title', () => {
    const { lines, findings } = printed(everyType);
    expect(findings).toEqual([]);
    expect(lines.map(({ full }) => full)).toMatchInlineSnapshot(`
      [
        "Shelf Society, 1995. A Manual.",
        "Heath, B., 1988. An Article. Invented Notes 2 (3): 4–7.",
        "Heath, B., 1989. A Book. Gorse Press.",
        "Heath, B., 1990. A Booklet.",
        "Heath, B., 1991. A Talk. In: Talks.",
        "Heath, B., 1992. A Book. Gorse Press.",
        "Heath, B., 1993. A Chapter. In: Chapters, 1–9. Gorse Press.",
        "Heath, B., 1994. A Talk. In: Talks.",
        "Heath, B., 1996. A Thesis. Heath College.",
        "Heath, B., 1997. A Thing.",
        "Heath, B., 1998. A Thesis. Heath College.",
        "Heath, B., 2000. A Report. Shelf Survey.",
        "Heath, B., 2001. Papers. Kept at the Shelf Society.",
        "Hopper, A. (ed.), 1999. Talks.",
      ]
    `);
  });

  it('shortens one, two and more names, and tells the same names and year apart by a letter', () => {
    const { lines } = printed(`
@misc{a, author={Heath, Bo}, title={B}, year=2001}
@misc{b, author={Heath, Bo}, title={A}, year=2001}
@misc{c, author={Heath, Bo and Hopper, Ann}, title={C}, year=2002}
@misc{d, author={de la Heath, Anne-Marie and Hopper, Ann and Gorse, Cy}, title={D}, year=2003}`);
    expect(lines.map(({ key, short }) => `${key}: ${short}`)).toEqual([
      'b: Heath 2001a',
      'a: Heath 2001b',
      'c: Heath & Hopper 2002',
      'd: de la Heath et al. 2003',
    ]);
    expect(lines[3]!.full).toBe('de la Heath, A.-M.; Hopper, A.; Gorse, C., 2003. D.');
  });

  it('makes an address of a DOI however it is written, and of nothing else', () => {
    const { lines } = printed(`
@misc{a, author={A, B}, title={T}, year=1, doi={https://doi.org/10.1234/xyz}}
@misc{b, author={B, B}, title={T}, year=1, doi={doi:10.1234/xyz}}
@misc{c, author={C, B}, title={T}, year=1, url={javascript:alert(1)}}`);
    expect(lines.map(({ url }) => url)).toEqual([
      'https://doi.org/10.1234/xyz',
      'https://doi.org/10.1234/xyz',
      undefined,
    ]);
  });

  it('reads letters written in LaTeX', () => {
    const { lines } = printed('@misc{a, author={N{\\o}rd, {\\AA}se}, title={Caf{\\\'e} \\"uber}, year=2001}');
    expect(lines[0]!.full).toBe('Nørd, Å., 2001. Café über.');
  });
});
