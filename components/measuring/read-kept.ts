import type { BenchRecord, Measured } from './bench-record.ts';
import { isPlace } from './place.ts';

type Fields = Record<string, unknown>;

/** The bench out of what was kept on this machine; undefined for anything that is not whole. */
export function readKept(text: string | null): BenchRecord | undefined {
  if (text === null) return undefined;
  try {
    const kept: unknown = JSON.parse(text);
    return isBench(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

function isBench(value: unknown): value is BenchRecord {
  if (!isFields(value)) return false;
  const { lineage, view, level, ownNames, ownLengths, now, finished, round, ownLine } = value;
  return (
    [lineage, view, level].every((each) => typeof each === 'string') &&
    isListOf(ownNames, (each) => typeof each === 'string') &&
    isListOf(
      ownLengths,
      (each) => isFields(each) && typeof each['from'] === 'string' && typeof each['to'] === 'string',
    ) &&
    isMeasured(now) &&
    isListOf(finished, isMeasured) &&
    isEnds(ownLine) &&
    typeof round === 'number' &&
    now.rounds[round] !== undefined
  );
}

function isMeasured(value: unknown): value is Measured {
  if (!isFields(value)) return false;
  const { specimen, picture, scale, scaleMm, rounds, absent, breaks } = value;
  return (
    typeof specimen === 'string' &&
    (picture === null || isPicture(picture)) &&
    isEnds(scale) &&
    typeof scaleMm === 'number' &&
    isListOf(rounds, (round) => isFields(round) && Object.values(round).every(isPlace)) &&
    isListOf(absent, (each) => typeof each === 'string') &&
    isFields(breaks) &&
    Object.values(breaks).every((places) => isListOf(places, isPlace))
  );
}

function isPicture(value: unknown): boolean {
  if (!isFields(value)) return false;
  const { name, width, height, mirrored = false } = value;
  return (
    typeof name === 'string' &&
    typeof width === 'number' &&
    typeof height === 'number' &&
    typeof mirrored === 'boolean'
  );
}

function isEnds(value: unknown): boolean {
  return isListOf(value, (end) => end === null || isPlace(end)) && (value as unknown[]).length === 2;
}

function isListOf(value: unknown, test: (each: unknown) => boolean): boolean {
  return Array.isArray(value) && value.every(test);
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
