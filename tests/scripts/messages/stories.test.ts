import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about stories', () => {
  it('a number is typed into a story', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': replaced('reads <Value of="collina-vivens" />', 'reads 42 or ٤٢ per cent'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:7:36-38 error story-digits
        a number is typed into the story: "42"
        place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result
      story.en.mdx:7:42-44 error story-digits
        a number is typed into the story: "٤٢"
        place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result"
    `);
  });

  it('a number stands in a heading', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('## One living animal', '## Animal no. 6') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:5:15-16 error story-digits
        a number is typed into the story: "6"
        place it with <Value>, <Age> or <Count>, so that it follows the records; put it in <Plain> if it is no result"
    `);
  });

  it('a catalogue number, a code, a link target and a plain text may hold digits', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': added(
          '\nSkull HM 6 is `no. 6`, see [the list](https://example.org/6).\n\n<Plain>Open 9 to 5.</Plain>\n',
        ),
      }),
    ).toMatchInlineSnapshot(`""`);
  });

  it('a number is told in words beside a unit', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': added(
          '\nIt lived thirty million years ago; the muzzle is half of the muzzle share.\n',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:11:10-24 warning story-number-word
        a number in words: "thirty million"
        if it is a result, place it with <Value>, <Age> or <Count>; round words such as "about half" stay true only by luck
      story.en.mdx:11:50-74 warning story-number-word
        a number in words: "half of the muzzle share"
        if it is a result, place it with <Value>, <Age> or <Count>; round words such as "about half" stay true only by luck"
    `);
  });

  it('a misleading phrase is used', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': added('\nThis missing link evolved into the modern hopper, a living fossil.\n'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:11:6-18 warning story-phrase
        think again about "missing link"
        no fossil is a link of a chain: write relative, or transitional feature (Mead 2009)
      story.en.mdx:11:19-31 warning story-phrase
        think again about "evolved into"
        named fossils are tips, not one another’s ancestors (MacDonald & Wiley 2012): write related to, or has, where a forebear had
      story.en.mdx:11:53-66 warning story-phrase
        think again about "living fossil"
        every living animal has been evolving as long as every other: say which feature has changed little"
    `);
  });

  it('a component is not known', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\n<Valu of="collina-vivens" />\n') }))
      .toMatchInlineSnapshot(`
        "story.en.mdx:11:1-6 error story-component
          unknown component <Valu>; did you mean "Value"?
          stories use Step, Value, Name, Age, Count, Term, SizeOf, Trend, Level, Sampled, Aside, Plain, Changes; everything else is Markdown"
      `);
  });

  it('an attribute is not known', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('<Step focus=', '<Step focuss=') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:7-30 error story-component
        <Step> has no attribute focuss; did you mean "focus"?
        it has focus, show, trait, age, from, to"
    `);
  });

  it('an attribute is missing', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\n<Age />\n') })).toMatchInlineSnapshot(`
      "story.en.mdx:11:1-5 error story-component
        <Age> has no of
        write <Age of="…">"
    `);
  });

  it('an attribute is code', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('show="figure"', 'show={figure}') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:30-43 error story-component
        an attribute of <Step> is code
        write a plain text between quotation marks"
    `);
  });

  it('a taxon in a story is misspelt', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': replaced('<Name of="collina-vivens" />', '<Name of="collina-vivans" />'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:7:7-26 error unknown-id
        unknown taxon: "collina-vivans"; did you mean "collina-vivens"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('a focus names an unknown member of a clade', async () => {
    expect(
      await findingsAfter({
        'story.en.mdx': replaced('focus="collina-vivens"', 'focus="clade:collina-nana+collina-vivans"'),
      }),
    ).toMatchInlineSnapshot(`
      "story.en.mdx:3:7-48 error unknown-id
        unknown taxon: "collina-vivans"; did you mean "collina-vivens"?
        name one of taxa.yaml, or add it there"
    `);
  });

  it('what a step shows is not known', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('show="figure"', 'show="figur"') }))
      .toMatchInlineSnapshot(`
        "story.en.mdx:3:30-42 error story-component
          unknown show: "figur"; did you mean "figure"?
          choose one of: figure, measurement, slice, table, bone, ribbons, trend"
      `);
  });

  it('a step has no heading', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('## One living animal', 'One living animal') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:3:1-6 error story-heading
        a step does not begin with a heading
        write a line "## …" first inside <Step>, after an empty line"
    `);
  });

  it('a component is never closed', async () => {
    expect(await findingsAfter({ 'story.en.mdx': replaced('</Step>', '') })).toMatchInlineSnapshot(`
      "story.en.mdx:1:1-2 error story-syntax
        the story cannot be read: expected a closing tag for \`<Step>\` (3:1-3:44)
        close every component, and write < and { as &lt; and &#123; where they are meant as characters"
    `);
  });

  it('a story imports', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\nimport x from "y"\n\nMore.\n') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:11:1-18 error story-component
        a story imports and exports nothing
        remove the line: the components are at hand without it"
    `);
  });

  it('braces hold code', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\nThe answer is {6 * 7}.\n') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:11:15-22 error story-component
        code in braces
        write the text itself, or place a number with <Value>, <Age> or <Count>"
    `);
  });

  it('a language has no story', async () => {
    const change = (text: string) => text.replace('languages: [en]', 'languages: [en, es]');
    const findings = await findingsAfter({ 'lineage.yaml': change });
    expect(
      findings
        .split('\n')
        .filter((_, index, lines) => /story-missing/.test(lines[index - (index % 3)]!))
        .join('\n'),
    ).toMatchInlineSnapshot(`
      "lineage.yaml:5:17-19 warning story-missing
        there is no story in "es"
        add story.es.mdx; until then the page says that its story is missing, and shows figure, values and evidence"
    `);
  });

  it('there is no story', async () => {
    expect(await findingsAfter({ 'story.en.mdx': null })).toMatchInlineSnapshot(`
      "lineage.yaml:5:13-15 warning story-missing
        there is no story
        add story.en.mdx; until then the page says that its story is missing, and shows figure, values and evidence"
    `);
  });

  it('a picture in a story is recorded with no specimen', async () => {
    expect(await findingsAfter({ 'story.en.mdx': added('\n![A hopper](images/hopper.svg)\n') }))
      .toMatchInlineSnapshot(`
      "story.en.mdx:11:1-31 error picture-rights
        the picture "images/hopper.svg" is recorded with no specimen
        list it under pictures of its specimen, with alt and rights, and name it by the same path"
    `);
  });
});
