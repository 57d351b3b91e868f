import type { Share } from '../mixture/mixture-types.ts';

/** Factor of change below which a pigment is not mentioned. */
const MIN_FACTOR = 1.08;

export interface PigmentChange {
  readonly pigment: string;
  /**
   * New amount over old, relative to the fixed pigment; Infinity for a new pigment, 0 for one that
   * is gone.
   */
  readonly factor: number;
  readonly share: number;
}

/** How a pile changes: another one altogether, or some amounts; none changed: the same pile. */
export type PileChange =
  | { readonly kind: 'other'; readonly pigments: readonly string[] }
  | { readonly kind: 'changed'; readonly changes: readonly PigmentChange[] };

/**
 * How the pile changes from one recipe to another. Only proportions count, so amounts are relative
 * to one fixed pigment: the one that leaves the fewest others changed.
 */
export function pileChange(from: readonly Share[], to: readonly Share[]): PileChange {
  const before = new Map(from.map(({ pigment, share }) => [pigment, share]));
  const after = new Map(to.map(({ pigment, share }) => [pigment, share]));
  const common = [...before.keys()].filter((pigment) => after.has(pigment));
  if (common.length === 0) return { kind: 'other', pigments: to.map(({ pigment }) => pigment) };
  return {
    kind: 'changed',
    changes: common
      .map((fixed) => changes(before, after, fixed))
      .reduce((least, one) => (weight(one) < weight(least) ? one : least)),
  };
}

function changes(
  before: ReadonlyMap<string, number>,
  after: ReadonlyMap<string, number>,
  fixed: string,
): PigmentChange[] {
  const scale = before.get(fixed)! / after.get(fixed)!;
  return [...new Set([...before.keys(), ...after.keys()])]
    .filter((pigment) => pigment !== fixed)
    .map((pigment) => {
      const share = after.get(pigment) ?? 0;
      return { pigment, factor: (share * scale) / (before.get(pigment) ?? 0), share };
    })
    .filter(({ factor }) => size(factor) >= MIN_FACTOR)
    .sort((p, q) => q.factor - p.factor);
}

const size = (factor: number): number => Math.max(factor, 1 / factor);
/** Prefer few words, then small changes. */
const weight = (changes: readonly PigmentChange[]): number =>
  changes.reduce((sum, { factor }) => sum + 1 + Math.min(1, Math.log(size(factor)) / 4), 0);
