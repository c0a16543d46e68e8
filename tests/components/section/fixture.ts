import type { SectionFigure } from '../../../components/figures/section/section-data.ts';
import type { SectionWords } from '../../../components/figures/section/compose-section.ts';

/** Three invented levels between two dated beds; the middle one has worn crowns only. */
export const threeLevels: SectionFigure = {
  label: 'Crown height',
  meaning: 'from base to tip',
  levels: [
    {
      id: 'low',
      number: 1,
      heightM: 1,
      ageMa: 9.8,
      estimate: 10,
      interval: [9.5, 10.5],
      unworn: [9, 10, 11],
      worn: [4, 8],
    },
    {
      id: 'middle',
      number: 2,
      heightM: 4,
      ageMa: 9.2,
      estimate: null,
      interval: [null, null],
      unworn: [],
      worn: [6],
    },
    {
      id: 'high',
      number: 3,
      heightM: 9,
      ageMa: 8.2,
      estimate: 11.5,
      interval: [11, 12],
      unworn: [11, 12],
      worn: [],
    },
  ],
  beds: [
    { heightM: 0, ageMa: 10, plusMinusMa: 0.1 },
    { heightM: 10, ageMa: 8, plusMinusMa: 0.1 },
  ],
  rocks: [
    { from: 0, to: 5, rock: 'clay' },
    { from: 5, to: 10, rock: 'gravel' },
  ],
  baseM: 0,
  topM: 10,
  endMm: 13,
};

const row = { word: 'word', note: 'a note' };

/** Words that say what they stand for. */
export const plainWords: SectionWords = {
  key: { mean: row, individual: row, worn: row, bed: row, between: row },
  value: (level) => `value of ${level}`,
  axes: {
    unit: 'mm',
    metres: 'm',
    ma: 'Ma',
    age: (ageMa) => `about ${ageMa}`,
    bedAge: (ageMa, plusMinusMa) => `${ageMa} ± ${plusMinusMa}`,
  },
};
