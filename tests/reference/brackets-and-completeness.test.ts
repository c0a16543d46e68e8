import { bracketReadings, spreadOfState, type Character } from '../../analysis/characters/index.ts';
import { characterCompleteness, skeletalCompleteness } from '../../analysis/completeness/index.ts';
import { holdToAccount, type Part } from './account.ts';
import known from './values/brackets-and-completeness.json' with { type: 'json' };

const { clade, outside, matrix, results } = known.diagnostic;

function characterOf(row: Readonly<Record<string, string | readonly string[]>>): Character {
  return new Map(Object.entries(row).map(([taxon, own]) => [taxon, own === '?' ? [] : [own].flat()]));
}

function spreads(name: keyof typeof matrix): Part {
  return results[name].map(({ state }) => {
    const spread = spreadOfState(characterOf(matrix[name]), state, { inside: clade, outside });
    return {
      state,
      nInScored: spread.inside.scored,
      nInWith: spread.inside.having,
      universalStrict: spread.universal.strict,
      universalScored: spread.universal.scored,
      nOutScored: spread.outside.scored,
      nOutWith: spread.outside.having,
      uniqueStrict: spread.unique.strict,
      uniqueScored: spread.unique.scored,
    };
  });
}

holdToAccount({
  name: 'brackets and completeness',
  values: known,
  given: [
    'epb/*/bracket1',
    'epb/*/bracket2',
    'epb/*/osteologicalCorrelateInFossil',
    'epbUncertain/*/bracket1',
    'epbUncertain/*/bracket2',
    'diagnostic/clade',
    'diagnostic/outside',
    'diagnostic/matrix',
    'SCM/elements',
    'CCM/nCharacters',
    'CCM/scored',
    'CCM/notApplicable',
  ],
  described: {
    'epb/*/note': 'remarks',
    'SCM/note': 'the formula in words',
    'SCM/twoSpecimens': 'two specimens without an answer; the test of the function has one',
  },
  checks: [
    {
      claim: 'levels of inference and what the living relatives decide',
      at: 'epb',
      within: 0,
      answer: () =>
        known.epb.map((row) => {
          const [reading] = bracketReadings({
            first: row.bracket1,
            second: row.bracket2,
            signOnBone: row.osteologicalCorrelateInFossil,
          });
          return {
            level: `${reading!.level}${reading!.prime ? "'" : ''}`,
            outgroupNodeAssessment: reading!.verdict,
          };
        }),
    },
    {
      claim: 'a relative of which it is not known leaves two levels open',
      at: 'epbUncertain',
      within: 0,
      answer: () =>
        known.epbUncertain.map(({ bracket2 }) => {
          const levels = bracketReadings({ first: undefined, second: bracket2, signOnBone: true }).map(
            ({ level }) => level,
          );
          return { expected: `undetermined between ${levels.join(' and ')}: report both, do not pick` };
        }),
    },
    {
      claim: 'unique and universal states of eight characters, with unscored and unsure taxa',
      at: 'diagnostic/results',
      within: 0,
      answer: () =>
        Object.fromEntries(
          (Object.keys(matrix) as (keyof typeof matrix)[]).map((name) => [name, spreads(name)]),
        ),
    },
    {
      claim: 'completeness by element',
      at: 'SCM',
      within: 1e-14,
      answer: () => {
        const elements = Object.entries(known.SCM.elements).map(([id, { w, present }]) => ({
          id,
          weight: w,
          preserved: present,
        }));
        return {
          percent: skeletalCompleteness(elements),
          sumWeights: elements.reduce((sum, { weight }) => sum + weight, 0),
        };
      },
    },
    {
      claim: 'completeness by character',
      at: 'CCM',
      within: 1e-14,
      answer: () => {
        const { nCharacters, scored, notApplicable } = known.CCM;
        const found = characterCompleteness({ characters: nCharacters, scored, inapplicable: notApplicable });
        return {
          unknown: found.unknown,
          ccm_allCharacters: found.ofAll,
          ccm_excludingInapplicable: found.ofApplicable,
        };
      },
    },
  ],
});
