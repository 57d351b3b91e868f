/** What a set of pigments may be. */
export interface Rules {
  /** Most pigments in one mixture, held ones included. */
  readonly most: number;
  /** count × count, 1 where two paints never go into one pile. */
  readonly clash: Uint8Array;
  /** Paints that are in every mixture anyway (see the `held` of compile). */
  readonly held: readonly number[];
}

/** The best that one set of pigments can do. */
export interface Candidate {
  /** Indices of the stock, rising. */
  readonly members: readonly number[];
  /** Logarithmic effective amounts, in the same order. */
  x: readonly number[];
  lab: readonly [number, number, number];
  /** The metric's distance: CIEDE2000 unless something else is kept first. */
  score: number;
  /** Pigments counting held ones. */
  readonly size: number;
}

/** Nearest first; of equals the fewer pigments. */
export const byScore = (a: Candidate, b: Candidate): number =>
  a.score - b.score || a.members.length - b.members.length;

/** A set with one member more. */
export const insert = (members: readonly number[], j: number): number[] =>
  [...members, j].sort((a, b) => a - b);

/** A number of its own for every set of up to six paints of a stock of up to 255. */
export function keyOf(members: readonly number[]): number {
  let key = 0;
  for (const member of members) key = key * 256 + member + 1;
  return key;
}

/** One candidate a set, the better; rising by score. */
export function bestOf(all: readonly Candidate[]): Candidate[] {
  const bySet = new Map<number, Candidate>();
  for (const one of all) {
    const key = keyOf(one.members);
    const known = bySet.get(key);
    if (!known || one.score < known.score) bySet.set(key, one);
  }
  return [...bySet.values()].sort(byScore);
}
