/* How much of a skeleton is there, and how many characters can be scored on it. */
export { characterCompleteness, type CharacterCounts } from './characters.ts';
export { findCompleteness, type ElementShare, type PreservedRecord } from './material.ts';
export { mostPreserved, skeletalCompleteness, type PreservedElement } from './skeletal.ts';
