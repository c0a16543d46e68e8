import { describe, expect, it } from 'vitest';
import { checkProse, proseRules } from '../../scripts/compile/check/story/check-prose.ts';
import { openReport } from '../../scripts/compile/findings/report.ts';
import { sourceText } from '../../scripts/compile/source/source-text.ts';

function found(language: string, text: string): string[] {
  const report = openReport();
  const source = sourceText('story.mdx', text);
  checkProse(
    text,
    { source, start: 0, end: text.length },
    proseRules(language, ['OBM 1183'], ['nasal position']),
    report,
  );
  return report.list().map(({ message }) => message);
}

describe('prose of a story', () => {
  it.each([
    ['en', 'It is no missing link.'],
    ['en', 'It evolved into a new kind.'],
    ['en', 'They are living fossils.'],
    ['en', 'It is the ancestor of them all.'],
    ['en', 'A more evolved animal.'],
    ['en', 'Primitive mammals had it, advanced forms did not.'],
    ['en', 'It stands on the ladder of life.'],
    ['es', 'Es el eslabón perdido.'],
    ['es', 'Evolucionó hasta convertirse en otro.'],
    ['es', 'Son fósiles vivientes.'],
    ['es', 'Es el antepasado directo de todos.'],
    ['es', 'Un animal más evolucionado.'],
    ['es', 'Los mamíferos primitivos lo tenían.'],
    ['ar', 'ليست هي الحلقة المفقودة.'],
    ['ar', 'تطوّرت إلى نوع آخر.'],
    ['ar', 'وهي أحافير حيّة.'],
    ['ar', 'ليس السلف المباشر لها.'],
    ['ar', 'حيوان أكثر تطورًا.'],
    ['ar', 'كانت عند الثدييات البدائية.'],
    ['ar', 'على سلّم الحياة.'],
  ])('in %s is asked about “%s”', (language, text) => {
    expect(found(language, text)[0]).toMatch(/^think again about/);
  });

  it.each([
    ['en', 'The lower jaw, the upper jaw, the higher cusp and the lower incisor are preserved.'],
    [
      'en',
      'The premaxilla evolved early; a link of the jaw joint is lost; the primitive streak is an embryo’s.',
    ],
    ['en', 'Natural selection had no plan. Its relatives share an ancestor.'],
    ['en', 'One skull has two openings and four teeth.'],
    ['es', 'La mandíbula inferior y el maxilar superior están completos; el diente superior falta.'],
    ['es', 'Un cráneo tiene dos aberturas. Comparten un antepasado.'],
    ['ar', 'للجمجمة فتحتان وأربع أسنان. يجمعها سلف مشترك، والفك السفلي كامل.'],
  ])('in %s may say “%s”', (language, text) => {
    expect(found(language, text)).toEqual([]);
  });

  it.each([
    ['en', 'forty million years'],
    ['en', 'two thirds of the nasal position'],
    ['en', 'thirty per cent'],
    ['es', 'cuarenta millones de años'],
    ['es', 'treinta por ciento'],
    ['es', 'la mitad de los milímetros'],
    ['ar', 'قبل أربعين مليون سنة'],
    ['ar', 'ثلاثون بالمئة'],
  ])('in %s is asked about a number in words: “%s”', (language, text) => {
    expect(found(language, text)).toHaveLength(1);
    expect(found(language, text)[0]).toMatch(/^a number in words/);
  });

  // Decimal digits of other scripts, superscripts, fractions and Roman numeral characters: Unicode 16, categories Nd, No, Nl.
  it.each(['7', '٧', '७', '７', '²', '½', 'Ⅳ'])('holds no digit of any script: %s', (digit) => {
    expect(found('en', `about ${digit} skulls`)).toEqual([`a number is typed into the story: "${digit}"`]);
  });

  it('may cite a known specimen by its number, and no other', () => {
    expect(found('en', 'The skull OBM 1183 is broken.')).toEqual([]);
    expect(found('en', 'The skull OBM\u00a01183 is broken.')).toEqual([]);
    expect(found('en', 'The skull OBM 11831 is broken.')).toEqual([
      'a number is typed into the story: "11831"',
    ]);
  });

  it('in a language without lists of phrases is still held to digits', () => {
    expect(found('fr', 'Il y a 7 millions d’années')).toEqual(['a number is typed into the story: "7"']);
  });
});
