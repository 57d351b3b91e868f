import type { Share } from '../mixture/mixture.ts';
import { joinWords } from '../wording.ts';

/**
 * Factor of change below which a pigment is not mentioned; then the limits for "a little" and
 * "much".
 */
const MIN_FACTOR = 1.08;
const LITTLE = 1.35;
const MUCH = 2.5;
/** Share of the pile below which a new pigment is "a touch". */
const TOUCH = 0.03;

interface Change {
  readonly pigment: string;
  /**
   * New amount over old, relative to the fixed pigment; Infinity for a new pigment, 0 for one that
   * is gone.
   */
  readonly factor: number;
  readonly share: number;
}

/**
 * Describes how the pile changes from one recipe to another: "a little red earth more, less lead
 * white". Only proportions count, so amounts are relative to one fixed pigment: the one that leaves
 * the fewest others changed.
 * @param nameOf pigment name as written within a sentence
 */
export function pileWords(
  from: readonly Share[],
  to: readonly Share[],
  nameOf: (pigment: string) => string,
): string {
  const before = new Map(from.map(({ pigment, share }) => [pigment, share]));
  const after = new Map(to.map(({ pigment, share }) => [pigment, share]));
  const kept = [...before.keys()].filter((pigment) => after.has(pigment));
  if (kept.length === 0)
    return `another pile: ${joinWords(to.map(({ pigment }) => nameOf(pigment)))}`;
  const told = kept
    .map((fixed) => changes(before, after, fixed))
    .reduce((least, one) => (weight(one) < weight(least) ? one : least));
  if (told.length === 0) return 'the same pile';
  return told.map((change) => words(change, nameOf(change.pigment))).join(', ');
}

function changes(
  before: ReadonlyMap<string, number>,
  after: ReadonlyMap<string, number>,
  fixed: string,
): Change[] {
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
const weight = (told: readonly Change[]): number =>
  told.reduce((sum, { factor }) => sum + 1 + Math.min(1, Math.log(size(factor)) / 4), 0);

function words({ factor, share }: Change, name: string): string {
  if (factor === 0) return `no ${name}`;
  if (factor === Number.POSITIVE_INFINITY)
    return share < TOUCH ? `a touch of ${name}` : `${name} added`;
  const more = factor > 1;
  if (size(factor) < LITTLE) return more ? `a little ${name} more` : `a little less ${name}`;
  const word = more ? 'more' : 'less';
  return size(factor) < MUCH ? `${word} ${name}` : `much ${word} ${name}`;
}
