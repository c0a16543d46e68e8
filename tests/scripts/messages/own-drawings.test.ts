import { describe, expect, it } from 'vitest';
import { findingsAfter, replaced, type Change } from '../fixtures/changed-lineage.ts';

const rights = 'rights: { image: Bo Heath, licence: CC0-1.0 }';

/** The small lineage with a drawing by hand of its fourth specimen. */
const withDrawing = (drawing: Change, record = `{ file: drawings/a.svg, by: Bo Heath, ${rights} }`) => ({
  'specimens.yaml': replaced(
    'landmarks: { view: left, sheet: sheets/landmarks.csv, scale:',
    `drawing: ${record}\n  landmarks: { view: left, sheet: sheets/landmarks.csv, scale:`,
  ),
  'drawings/a.svg': drawing,
});

const marks = `<g id="landmarks">
  <circle id="snout-tip" cx="1" cy="1"/>
  <circle id="eye-front" cx="25" cy="-5"/>
</g>`;
const drawn = (inside: string, landmarks = marks) =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 70 20">\n${inside}\n${landmarks}\n</svg>`;
const bone = '<g id="bone"><path d="M0 0L60 0"/></g>';

describe('a drawing by hand', () => {
  it('is taken as it is where it only draws', async () => {
    expect(await findingsAfter(withDrawing(drawn(bone)))).toBe('');
  });

  it.each([
    ['a script', '<script>alert(1)</script>'],
    ['a script under another name', '<x:script>alert(1)</x:script>'],
    ['an event handler', '<path d="M0 0" onclick="alert(1)"/>'],
    ['a foreign object', '<foreignObject><p>x</p></foreignObject>'],
    ['an outside picture', '<image href="https://example.org/a.png"/>'],
    ['an outside gradient', '<path fill="url(https://example.org/a.svg#b)" d="M0 0"/>'],
    ['something that moves', '<path d="M0 0"><animate attributeName="d"/></path>'],
    ['a link', '<a href="#x"><path d="M0 0"/></a>'],
    ['a sheet of styles', '<style>path { fill: red }</style>'],
    ['letters', '<text x="1">skull</text>'],
  ])('is refused with %s, at its line', async (_, inside) => {
    const findings = await findingsAfter(withDrawing(drawn(`<g id="bone">\n${inside}\n</g>`)));
    expect(findings).toMatch(/^drawings\/a\.svg:3:\d+-\d+ error active-drawing/);
  });

  it('names the element and the line of what it refuses', async () => {
    const inside = '<g id="bone"><path d="M0 0"/>\n<path onload="x" d="M0 0"/><animate/></g>';
    expect(await findingsAfter(withDrawing(drawn(inside)))).toMatchInlineSnapshot(`
      "drawings/a.svg:3:7-13 error active-drawing
        "onload" of <path> could run
        take the attribute out: a drawing is lines and areas
      drawings/a.svg:3:28-38 error active-drawing
        <animate> may not stand in a drawing: it would move by itself
        take it out: what moves cannot be compared"
    `);
  });

  it('needs a group of bone and one of landmarks', async () => {
    expect(await findingsAfter(withDrawing(drawn('<g id="bones"/>')))).toMatchInlineSnapshot(`
      "drawings/a.svg:1:1-61 error drawing-shape
        the drawing has no group with the id "bone"
        name its groups bone, restored, accent and landmarks; the first and the last are needed"
    `);
    expect(await findingsAfter(withDrawing(drawn(bone, '')))).toMatchInlineSnapshot(`
      "drawings/a.svg:1:1-61 error drawing-shape
        the drawing has no group with the id "landmarks"
        name its groups bone, restored, accent and landmarks; the first and the last are needed"
    `);
  });

  it('marks landmarks of the scheme, by circles that nothing moves', async () => {
    const unknown =
      '<g id="landmarks"><circle id="snout" cx="1" cy="1"/><circle id="eye-front" cx="2" cy="1"/></g>';
    expect(await findingsAfter(withDrawing(drawn(bone, unknown)))).toMatchInlineSnapshot(`
      "drawings/a.svg:3:1-19 error drawing-shape
        the drawing marks 1 landmarks; two are needed
        mark the two ends of the measured line
      drawings/a.svg:3:19-53 error drawing-shape
        unknown landmark in the drawing: "snout"
        give the circle the id of a landmark of scheme.yaml"
    `);
    const moved = marks.replace('id="landmarks"', 'id="landmarks" transform="scale(2)"');
    expect(await findingsAfter(withDrawing(drawn(bone, moved)))).toMatchInlineSnapshot(`
      "drawings/a.svg:3:1-40 error drawing-shape
        something moves the landmarks of the drawing
        save it with the movements applied"
    `);
  });

  it('is well-formed', async () => {
    expect(await findingsAfter(withDrawing(drawn('<g id="bone"><path d="M0 0">')))).toMatchInlineSnapshot(`
      "drawings/a.svg:7:1-2 error drawing-shape
        the drawing is not well-formed: </svg> closes nothing that is open
        save it again as SVG"
    `);
    expect(await findingsAfter(withDrawing('a skull'))).toMatchInlineSnapshot(`
      "drawings/a.svg:1:1-2 error drawing-shape
        the drawing is not well-formed: there is no drawing
        save it again as SVG"
    `);
  });

  it('stands in its folder and says whose it is', async () => {
    expect(await findingsAfter(withDrawing(drawn(bone), '{ file: drawings/a.svg, by: Bo Heath }')))
      .toMatchInlineSnapshot(`
      "specimens.yaml:30:12-50 error picture-rights
        nothing says under rights whose "drawings/a.svg" is
        add rights: { image: who holds them, licence: … }"
    `);
    expect(await findingsAfter(withDrawing(drawn(bone), `{ file: drawings/b.svg, by: Bo Heath, ${rights} }`)))
      .toMatchInlineSnapshot(`
      "specimens.yaml:30:20-34 error missing-file
        there is no file "drawings/b.svg"; did you mean "drawings/a.svg"?
        add the file, or correct its path from the folder of the lineage"
    `);
  });

  it('marks landmarks where they were digitised, whatever its scale and turn', async () => {
    // hm-4: snout tip 10,10; eye 250,-50; rear 640,0; teeth 90,30 and 300,30
    const at = (rear: string) => `<g id="landmarks">
      <circle id="snout-tip" cx="-20" cy="20"/><circle id="eye-front" cx="100" cy="500"/>
      <circle id="skull-rear" ${rear}/><circle id="tooth-rear" cx="-60" cy="600"/></g>`;
    expect(await findingsAfter(withDrawing(drawn(bone, at('cx="0" cy="1280"'))))).toBe('');
    expect(await findingsAfter(withDrawing(drawn(bone, at('cx="0" cy="900"'))))).toMatch(
      /warning drawing-off/,
    );
  });
});
