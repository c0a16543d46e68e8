import { seededRandom } from '../random/index.ts';
import { ageMeanMa, ageQuantileMa, probabilityYounger, type HorizonAge } from './horizon-age.ts';
import { liesAbove, type BedsBelow } from './order.ts';

/** Beds to draw ages for, and which lies above which. */
export interface BedsToDraw {
  readonly beds: ReadonlyMap<string, HorizonAge>;
  readonly below: BedsBelow;
}

/** Tries at a draw that obeys superposition before the beds are drawn one under the other. */
const tries = 200;

/** Probability beyond which a normal age is not drawn when beds are drawn one under the other. */
const edge = 1e-6;

/**
 * One age a bed, Ma, for one numbered draw: random by seed, bed and draw alone, so that a new bed moves no other's. No
 * bed is older than one below it: draws of beds of one section are repeated until they obey, or else drawn from the top
 * down, each at least as old as those above. Never younger than the present. Throws, naming the beds, where their ages
 * cannot obey, or they lie above each other in a ring.
 */
export function drawAges(toDraw: BedsToDraw, seed: string | number, draw: number): Map<string, number> {
  return ageDrawer(toDraw, seed)(draw);
}

/** The same for one draw after another, the beds sorted into sections once. */
export function ageDrawer(
  { beds, below }: BedsToDraw,
  seed: string | number,
): (draw: number) => Map<string, number> {
  const sections = sectionsOf({ beds, below });
  return (draw) => {
    const ages = new Map<string, number>();
    for (const section of sections) {
      const found =
        drawByTries(section, { beds, below }, seed, draw) ??
        drawDownward(section, { beds, below }, seed, draw);
      for (const [bed, ageMa] of found) ages.set(bed, ageMa);
    }
    return ages;
  };
}

function drawOne(
  age: HorizonAge,
  keys: readonly (string | number)[],
  leastMa = 0,
  mostMa = Infinity,
): number {
  const least = leastMa > 0 ? probabilityYounger(age, leastMa) : 0;
  const most = mostMa < Infinity ? probabilityYounger(age, mostMa) : 1;
  const share = least + (most - least) * (seededRandom(...keys)() * (1 - 2 ** -40) + 2 ** -41);
  if (!(share > 0 && share < 1)) return Math.min(Math.max(leastMa, ageMeanMa(age)), mostMa);
  return Math.min(Math.max(leastMa, ageQuantileMa(age, share)), mostMa);
}

function drawByTries(
  section: readonly string[],
  { beds, below }: BedsToDraw,
  seed: string | number,
  draw: number,
): Map<string, number> | undefined {
  for (let attempt = 0; attempt < tries; attempt++) {
    const ages = new Map(
      section.map((bed) => [bed, drawOne(beds.get(bed)!, [seed, 'age', bed, draw, attempt])]),
    );
    const obeys = section.every((bed) =>
      (below.get(bed) ?? []).every((lower) => !ages.has(lower) || ages.get(lower)! >= ages.get(bed)!),
    );
    if (obeys) return ages;
  }
  return undefined;
}

/** Draws the beds of a section from the top down, each between the drawn ages above it and the oldest possible below. */
function drawDownward(
  section: readonly string[],
  { beds, below }: BedsToDraw,
  seed: string | number,
  draw: number,
): Map<string, number> {
  const oldestMa = oldestPossible(section, { beds, below });
  const ages = new Map<string, number>();
  for (const bed of section) {
    const above = section.filter((other) => (below.get(other) ?? []).includes(bed));
    const leastMa = Math.max(0, ...above.map((other) => ages.get(other)!));
    const age = beds.get(bed)!;
    if (oldestMa.get(bed)! < ageQuantileMa(age, edge)) {
      const lower = (below.get(bed) ?? []).find((other) => oldestMa.get(other) === oldestMa.get(bed));
      throw new Error(`"${bed}" cannot be as young as "${lower}" below it`);
    }
    ages.set(bed, drawOne(age, [seed, 'age', bed, draw, 'down'], leastMa, oldestMa.get(bed)));
  }
  return ages;
}

/** Oldest age each bed of a section may have, from its own and from those below it. */
function oldestPossible(section: readonly string[], { beds, below }: BedsToDraw): Map<string, number> {
  const oldestMa = new Map<string, number>();
  for (const bed of [...section].reverse()) {
    const lowers = (below.get(bed) ?? []).map((lower) => oldestMa.get(lower) ?? Infinity);
    oldestMa.set(bed, Math.min(ageQuantileMa(beds.get(bed)!, 1 - edge), ...lowers));
  }
  return oldestMa;
}

/** Beds tied to each other by superposition, each group from the top down; a bed with no tie is a group of its own. */
function sectionsOf({ beds, below }: BedsToDraw): string[][] {
  const groupOf = new Map([...beds.keys()].map((bed) => [bed, bed]));
  const leader = (bed: string): string => {
    let at = bed;
    while (groupOf.get(at) !== at) at = groupOf.get(at)!;
    return at;
  };
  for (const [bed, lowers] of below) {
    if (!beds.has(bed)) continue;
    if (liesAbove(bed, bed, below)) throw new Error(`"${bed}" lies above itself`);
    for (const lower of lowers) if (beds.has(lower)) groupOf.set(leader(bed), leader(lower));
  }
  const groups = new Map<string, string[]>();
  for (const bed of beds.keys()) groups.set(leader(bed), [...(groups.get(leader(bed)) ?? []), bed]);
  return [...groups.values()].map((group) => topDown(group, below));
}

function topDown(group: readonly string[], below: BedsBelow): string[] {
  const left = new Set(group);
  const sorted: string[] = [];
  while (left.size > 0) {
    const top = [...left].find((bed) => ![...left].some((other) => (below.get(other) ?? []).includes(bed)))!;
    left.delete(top);
    sorted.push(top);
  }
  return sorted;
}
