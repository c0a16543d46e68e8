import { seededRandom } from '../../../analysis/random/index.ts';
import { crosses, overlap, type Box, type Slot } from './label-slots.ts';

/** A name that wants a place: its slots, cheapest first, and the box of its own mark, which its leader may touch. */
export interface Candidate {
  id: string;
  slots: readonly Slot[];
  own: Box;
}

/** How often the whole list is gone through to better the places. */
const rounds = 6;

/** What it costs to leave a name without a place; more than any slot. */
const homelessCost = 1000;

/** Orders in which the names are tried; the cheapest result is kept. */
const attempts = 40;

/** Among so many names the orders tried are few, and each name keeps the cheapest of its free slots: the rest are much alike. */
const manyNames = 60;
const attemptsOfMany = 4;
const slotsOfMany = 12;

/**
 * Gives names their places. In turn each takes its cheapest free slot; then names move to cheaper slots, if need be by
 * sending one neighbour elsewhere, as long as the sum of both costs falls. This is done for the given order and for seeded
 * shuffles of it, and the cheapest result is kept. No two names overlap, none covers an obstacle, and no leader runs through
 * a name or another mark. Names that find no place are absent from the result.
 */
export function placeNames(candidates: readonly Candidate[], obstacles: readonly Box[]): Map<string, Slot> {
  const isMany = candidates.length > manyNames;
  const free = candidates.map((candidate) => ({
    ...candidate,
    slots: candidate.slots
      .filter((slot) => clearOf(obstacles, slot, candidate.own))
      .slice(0, isMany ? slotsOfMany : Infinity),
  }));
  const random = seededRandom('names on a plate');
  let best = placeInOrder(free);
  let bestCost = costOf(free, best);
  const tries = isMany ? attemptsOfMany : attempts;
  for (let attempt = 1; attempt < tries; attempt++) {
    const next = placeInOrder(shuffled(free, random));
    const cost = costOf(free, next);
    if (cost < bestCost) [best, bestCost] = [next, cost];
  }
  return best;
}

function placeInOrder(candidates: readonly Candidate[]): Map<string, Slot> {
  const byId = new Map(candidates.map((candidate) => [candidate.id, candidate]));
  const placed = new Map<string, Slot>();
  for (const candidate of candidates) {
    const slot = candidate.slots.find((each) => blockers(each, candidate.id, placed).length === 0);
    if (slot) placed.set(candidate.id, slot);
  }
  for (let round = 0; round < rounds; round++) {
    const moved = candidates.filter((candidate) => better(candidate, byId, placed));
    if (moved.length === 0) break;
  }
  return placed;
}

function costOf(candidates: readonly Candidate[], placed: ReadonlyMap<string, Slot>): number {
  return candidates.reduce((sum, { id }) => sum + (placed.get(id)?.cost ?? homelessCost), 0);
}

/** A shuffled copy, by Fisher and Yates. */
function shuffled<T>(list: readonly T[], random: () => number): T[] {
  const copy = [...list];
  for (let last = copy.length - 1; last > 0; last--) {
    const pick = Math.floor(random() * (last + 1));
    [copy[last], copy[pick]] = [copy[pick]!, copy[last]!];
  }
  return copy;
}

/** Moves a name to a cheaper slot, sending at most one neighbour elsewhere; tells whether anything moved. */
function better(
  candidate: Candidate,
  byId: ReadonlyMap<string, Candidate>,
  placed: Map<string, Slot>,
): boolean {
  const present = placed.get(candidate.id);
  const presentCost = present?.cost ?? homelessCost;
  for (const slot of candidate.slots) {
    if (slot.cost >= presentCost) return false;
    const inTheWay = blockers(slot, candidate.id, placed);
    if (inTheWay.length > 1) continue;
    const [neighbour] = inTheWay;
    if (neighbour === undefined) {
      placed.set(candidate.id, slot);
      return true;
    }
    if (sendAway(neighbour, candidate.id, slot, presentCost - slot.cost, byId, placed)) return true;
  }
  return false;
}

/** Gives `slot` to `id` and a new slot to the neighbour that stood there, if that costs less than is gained. */
function sendAway(
  neighbour: string,
  id: string,
  slot: Slot,
  gain: number,
  byId: ReadonlyMap<string, Candidate>,
  placed: Map<string, Slot>,
): boolean {
  const [mine, theirs] = [placed.get(id), placed.get(neighbour)!];
  placed.set(id, slot);
  placed.delete(neighbour);
  const next = byId.get(neighbour)!.slots.find((each) => blockers(each, neighbour, placed).length === 0);
  if (next && next.cost - theirs.cost < gain) {
    placed.set(neighbour, next);
    return true;
  }
  placed.set(neighbour, theirs);
  if (mine) placed.set(id, mine);
  else placed.delete(id);
  return false;
}

/** Names that stand where this slot would; looking stops at the second, since more cannot be sent away. */
function blockers(slot: Slot, id: string, placed: ReadonlyMap<string, Slot>): string[] {
  const found: string[] = [];
  for (const [other, place] of placed) {
    if (other === id || !conflict(slot, place)) continue;
    found.push(other);
    if (found.length > 1) break;
  }
  return found;
}

function clearOf(obstacles: readonly Box[], slot: Slot, own: Box): boolean {
  const { leader } = slot;
  return !obstacles.some(
    (box) =>
      overlap(box, slot.box) || (leader !== undefined && box !== own && crosses(leader.from, leader.to, box)),
  );
}

function conflict(a: Slot, b: Slot): boolean {
  if (overlap(a.box, b.box)) return true;
  if (a.leader && crosses(a.leader.from, a.leader.to, b.box)) return true;
  return b.leader !== undefined && crosses(b.leader.from, b.leader.to, a.box);
}
