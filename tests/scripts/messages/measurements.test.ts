import { describe, expect, it } from 'vitest';
import { added, findingsAfter, replaced } from '../fixtures/changed-lineage.ts';

describe('messages about measurements', () => {
  it('a length is zero', async () => {
    expect(
      await findingsAfter({
        'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,29.4,0'),
        'scheme.yaml': replaced(
          'skull-length, from: snout-tip, to: skull-rear, along: tooth-row',
          'skull-length, from: snout-tip, to: skull-rear',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:11-12 error not-a-length
        "skull-length" is 0; a length is more than zero
        measure again, or leave the cell empty"
    `);
  });

  it.each(['.inf', '-.inf', '.nan'])('a length is not finite: %s', async (value) => {
    const [first] = (
      await findingsAfter({ 'specimens.yaml': replaced('value: 61,', `value: ${value},`) })
    ).split('\n');
    expect(first).toMatch(/^specimens\.yaml:18:28-\d+ error wrong-type$/);
  });

  it('a length is negative in a record', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          'skull-length: { value: 61, unit: mm }',
          'skull-length: { value: -61, unit: mm }',
        ),
        'scheme.yaml': replaced(
          'skull-length, from: snout-tip, to: skull-rear, along: tooth-row',
          'skull-length, from: snout-tip, to: skull-rear',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:19-43 error not-a-length
        "skull-length" is -61; a length is more than zero
        measure again, or leave it out"
    `);
  });

  it('a length is in degrees', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, unit: degrees }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:38-45 error unit-mismatch
        "skull-length" is a length, and degrees cannot say it
        give it in mm, cm, m or in"
    `);
  });

  it('a column has no unit', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': replaced('skull-length (mm)', 'skull-length') }))
      .toMatchInlineSnapshot(`
      "sheets/callipers.csv:1:29-41 error unit-mismatch
        the column "skull-length" has no unit
        write its unit in the header: "skull-length (mm)""
    `);
  });

  it('repeats disagree', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('[60.2, 60.0, 60.1]', '[60.2, 66.9, 60.1]') }))
      .toMatchInlineSnapshot(`
        "specimens.yaml:10:19-60 warning repeats-disagree
          the repeats of "skull-length" are 6.8 apart
          measure again; a slip of the pen or of the unit is the usual cause"
      `);
  });

  it('repeats of landmarks disagree', async () => {
    expect(
      await findingsAfter({ 'sheets/landmarks.csv': replaced('hm-3,2,0,1,207,-61', 'hm-3,2,0,1,270,-61') }),
    ).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:3:12-19 warning repeats-disagree
        "eye-front" of hm-3 stands elsewhere than in the first repeat
        digitise it again; a swapped pair of landmarks or another picture is the usual cause"
    `);
  });

  it('callipers and landmarks disagree', async () => {
    expect(await findingsAfter({ 'sheets/callipers.csv': added('hm-3,20.6,66.0\n') })).toMatchInlineSnapshot(`
      "sheets/callipers.csv:5:11-15 warning readings-disagree
        "skull-length" is 66.00 by callipers and 60.10 from landmarks
        look at both again: the scale of the picture, a landmark or the callipers may be off"
    `);
  });

  it('neither a value nor repeats are given', async () => {
    expect(await findingsAfter({ 'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ unit: mm }') }))
      .toMatchInlineSnapshot(`
      "specimens.yaml:18:19-31 error no-value
        neither a value nor repeats are given
        give value: or repeats:"
    `);
  });

  it('both a value and repeats are given', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, repeats: [61, 62], unit: mm }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:19-61 error many-values
        both a value and repeats are given
        keep the repeats: their mean is used"
    `);
  });

  it('two records stand and none is preferred', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced(
          '{ value: 61, unit: mm }',
          '[{ value: 61, unit: mm }, { value: 61.5, unit: mm, source: hopper-notes }]',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:45-92 error many-values
        "skull-length" is recorded 2 times, and none is preferred
        keep them all with their sources, and write preferred: true on the one to use"
    `);
  });

  it('about has no plus or minus', async () => {
    expect(
      await findingsAfter({
        'specimens.yaml': replaced('{ value: 61, unit: mm }', '{ value: 61, unit: mm, approximate: true }'),
      }),
    ).toMatchInlineSnapshot(`
      "specimens.yaml:18:55-59 error approximate-without-error
        approximate is true, where its plus or minus is meant
        give the 95% plus or minus in the unit of the value: approximate: 6"
    `);
  });

  it('nothing says what a measurement is', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced(
          '  - { id: tooth-row-length, from: tooth-front, to: tooth-rear }',
          '  - { id: tooth-row-length }',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:15:11-27 error measurement-undefined
        nothing says what "tooth-row-length" is
        give from and to, angle, count, or a definition in words for callipers"
    `);
  });

  it('a measurement has one end', async () => {
    expect(
      await findingsAfter({
        'scheme.yaml': replaced(
          'id: tooth-row-length, from: tooth-front, to: tooth-rear',
          'id: tooth-row-length, from: tooth-front',
        ),
      }),
    ).toMatchInlineSnapshot(`
      "scheme.yaml:15:11-27 error measurement-undefined
        "tooth-row-length" has one end only
        give both from and to"
    `);
  });

  it('centimetres are taken for millimetres', async () => {
    const more =
      '- { id: hm-10, taxon: saltula-prima, horizon: lower-shelf }\n- { id: hm-11, taxon: saltula-prima, horizon: lower-shelf }\n';
    const changes = {
      'specimens.yaml': added(more),
      'sheets/callipers.csv': added('hm-10,20.4,60.6\nhm-11,20.6,6.07\n'),
    };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "sheets/callipers.csv:6:12-16 warning unit-slip
        "skull-length" is 10.0 times smaller than other specimens of "saltula-prima" suggest
        centimetres and millimetres differ by 10: check the unit and the number
      traits.yaml:2:7-19 warning rate-at-zero
        the values of "muzzle-share" differ by no more than their errors, so they may not have changed at all
        more specimens narrow the errors; until then its estimates are wide"
    `);
  });

  it('one length of a lone specimen does not fit its other lengths', async () => {
    const changes = { 'sheets/callipers.csv': replaced('hm-5,29.4,70.2', 'hm-5,2.94,70.2') };
    expect(
      await findingsAfter({
        ...changes,
        'specimens.yaml': added('- { id: hm-10, taxon: saltula-prima, horizon: lower-shelf }\n'),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/callipers.csv:2:6-10 warning unit-slip
        "muzzle-length" is 7.9 times smaller than the other lengths of this specimen suggest
        centimetres and millimetres differ by 10: check the unit and the number"
    `);
  });
});
