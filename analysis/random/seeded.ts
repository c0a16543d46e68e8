/** Numbers from 0 up to, not including, 1. */
export type Random = () => number;

/** 32-bit digest of a text (FNV-1a), well mixed by the final steps of MurmurHash3; both are in the public domain. */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    hash = Math.imul(hash ^ (code & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (code >>> 8), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}

/**
 * Stream of random numbers that depends only on its keys, such as a seed, an id and the number of a draw: two streams
 * of unlike keys have nothing to do with each other, so a new taxon moves nobody else's draws. 53 bits a number, from
 * four 32-bit words of state (the counter-based generator sfc32 of PractRand, public domain).
 */
export function seededRandom(...keys: readonly (string | number)[]): Random {
  const key = JSON.stringify(keys);
  let a = hashText(`a${key}`);
  let b = hashText(`b${key}`);
  let c = hashText(`c${key}`);
  let counter = 1;
  const word = () => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return sum >>> 0;
  };
  for (let k = 0; k < 12; k++) word();
  return () => ((word() >>> 5) * 67108864 + (word() >>> 6)) / 9007199254740992;
}
