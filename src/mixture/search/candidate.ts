/** Constraints on a set of pigments. */
export interface PigmentConstraints {
  /** Maximum number of pigments in one mixture, including required ones. */
  readonly most: number;
  /** count × count, 1 for two paints that must not be mixed. */
  readonly clash: Uint8Array;
  /** Indices of paints required in every mixture (see `held` of compile()). */
  readonly held: readonly number[];
}

/** The best mixture found for one set of pigments. */
export interface Candidate {
  /** Indices in the stock, ascending. */
  readonly members: readonly number[];
  /** Logarithmic effective amounts, in the same order. */
  x: readonly number[];
  lab: readonly [number, number, number];
  /** The metric's distance: CIEDE2000, unless one axis has a larger weight. */
  score: number;
  /** Number of pigments including required ones. */
  readonly size: number;
}

/** Sorts by score, then by number of pigments. */
export const byScore = (a: Candidate, b: Candidate): number =>
  a.score - b.score || a.members.length - b.members.length;

/** A set with one more member, sorted. */
export const insert = (members: readonly number[], j: number): number[] =>
  [...members, j].sort((a, b) => a - b);

/** A unique number for every set of up to six paints from a stock of up to 255. */
export function keyOf(members: readonly number[]): number {
  let key = 0;
  for (const member of members) key = key * 256 + member + 1;
  return key;
}

/** The best candidate of each set, sorted by score. */
export function bestOf(all: readonly Candidate[]): Candidate[] {
  const bySet = new Map<number, Candidate>();
  for (const one of all) {
    const key = keyOf(one.members);
    const known = bySet.get(key);
    if (!known || one.score < known.score) bySet.set(key, one);
  }
  return [...bySet.values()].sort(byScore);
}
