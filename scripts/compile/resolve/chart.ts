/*
 * The part of the International Chronostratigraphic Chart that the compiler needs: names and boundaries of the Cenozoic.
 * Ages: International Commission on Stratigraphy, chart v2024/12 (CC BY 4.0). Spanish names: general knowledge.
 */

/** One unit of the chart; it reaches from its base to the base of the unit above. */
export interface ChartUnit {
  id: string;
  name: string;
  nameEs: string;
  rank: 'period' | 'epoch' | 'stage';
  fromMa: number;
  toMa: number;
}

export const chartVersion = 'v2024/12';
export const chartCitation =
  'International Commission on Stratigraphy: International Chronostratigraphic Chart v2024/12 (CC BY 4.0)';

type Row = readonly [name: string, nameEs: string, fromMa: number, toMa: number];

const periods: readonly Row[] = [
  ['Quaternary', 'Cuaternario', 2.58, 0],
  ['Neogene', 'Neógeno', 23.04, 2.58],
  ['Paleogene', 'Paleógeno', 66, 23.04],
];

const epochs: readonly Row[] = [
  ['Holocene', 'Holoceno', 0.0117, 0],
  ['Pleistocene', 'Pleistoceno', 2.58, 0.0117],
  ['Pliocene', 'Plioceno', 5.333, 2.58],
  ['Miocene', 'Mioceno', 23.04, 5.333],
  ['Oligocene', 'Oligoceno', 33.9, 23.04],
  ['Eocene', 'Eoceno', 56, 33.9],
  ['Paleocene', 'Paleoceno', 66, 56],
];

const stages: readonly Row[] = [
  ['Meghalayan', 'Megalayense', 0.0042, 0],
  ['Northgrippian', 'Norgripiense', 0.0082, 0.0042],
  ['Greenlandian', 'Groenlandiense', 0.0117, 0.0082],
  ['Upper Pleistocene', 'Pleistoceno Superior', 0.129, 0.0117],
  ['Chibanian', 'Chibaniense', 0.774, 0.129],
  ['Calabrian', 'Calabriense', 1.8, 0.774],
  ['Gelasian', 'Gelasiense', 2.58, 1.8],
  ['Piacenzian', 'Piacenziense', 3.6, 2.58],
  ['Zanclean', 'Zancliense', 5.333, 3.6],
  ['Messinian', 'Messiniense', 7.246, 5.333],
  ['Tortonian', 'Tortoniense', 11.63, 7.246],
  ['Serravallian', 'Serravalliense', 13.82, 11.63],
  ['Langhian', 'Langhiense', 15.98, 13.82],
  ['Burdigalian', 'Burdigaliense', 20.45, 15.98],
  ['Aquitanian', 'Aquitaniense', 23.04, 20.45],
  ['Chattian', 'Chattiense', 27.3, 23.04],
  ['Rupelian', 'Rupeliense', 33.9, 27.3],
  ['Priabonian', 'Priaboniense', 37.71, 33.9],
  ['Bartonian', 'Bartoniense', 41.03, 37.71],
  ['Lutetian', 'Luteciense', 48.07, 41.03],
  ['Ypresian', 'Ypresiense', 56, 48.07],
  ['Thanetian', 'Thanetiense', 59.24, 56],
  ['Selandian', 'Selandiense', 61.66, 59.24],
  ['Danian', 'Daniense', 66, 61.66],
];

/** Every unit known here, periods before epochs before stages, youngest first. */
export const chartUnits: readonly ChartUnit[] = [
  ...units(periods, 'period'),
  ...units(epochs, 'epoch'),
  ...units(stages, 'stage'),
];

function units(rows: readonly Row[], rank: ChartUnit['rank']): ChartUnit[] {
  return rows.map(([name, nameEs, fromMa, toMa]) => ({
    id: name.toLowerCase().replaceAll(' ', '-'),
    name,
    nameEs,
    rank,
    fromMa,
    toMa,
  }));
}

/** The unit of a name, in English or Spanish and whatever its case; undefined for a name that is not on the chart. */
export function findChartUnit(name: string): ChartUnit | undefined {
  const wanted = name.trim().toLowerCase();
  return chartUnits.find(
    (unit) => unit.name.toLowerCase() === wanted || unit.nameEs.toLowerCase() === wanted,
  );
}

/** Every name that `findChartUnit` knows. */
export function chartNames(): string[] {
  return chartUnits.flatMap((unit) => [unit.name, unit.nameEs]);
}
