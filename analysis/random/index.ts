/* Random numbers that depend on nothing but their keys. */
export { hashText, seededRandom, type Random } from './seeded.ts';
export { normalDraw } from './normal-draw.ts';
