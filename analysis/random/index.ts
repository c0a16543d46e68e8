export { hashText, seededRandom, type Random } from './seeded.ts';
export { normalDraw } from './normal-draw.ts';
