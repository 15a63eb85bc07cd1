/** Numbers in [0, 1); the caller passes the generator in, so that a forecast can be repeated. */
export type Random = () => number;

/**
 * The generator sfc32 (Doty-Humphrey's small fast counting generator): the same seed gives the same
 * numbers on every machine. The seed is any whole number.
 */
export function seededRandom(seed: number): Random {
  let a = seed | 0;
  let b = Math.floor(seed / 2 ** 32) | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return (sum >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 15; i += 1) next();
  return next;
}

/** A seed from a text such as an id: FNV-1a, so that each item draws numbers of its own. */
export function seedFrom(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}
