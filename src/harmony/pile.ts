import type { Share } from '../mixture/mixture.ts';

/** A pigment whose amount changes by less than this factor is not spoken of. */
const UNSAID = 1.08;
const LITTLE = 1.35;
const MUCH = 2.5;
/** Under this share of the pile a newcomer is a touch. */
const TOUCH = 0.03;

interface Change {
  readonly pigment: string;
  /** New amount over old, beside the pigment that is kept; Infinity for a newcomer, 0 for one gone. */
  readonly factor: number;
  readonly share: number;
}

/**
 * What changes in the pile from one recipe to another: "a little red earth more, less lead white". All
 * amounts are told beside the one pigment that lets most of the others stand, since only proportions count.
 * @param nameOf what a person reads for a pigment, within a sentence
 */
export function pileWords(
  from: readonly Share[],
  to: readonly Share[],
  nameOf: (pigment: string) => string,
): string {
  const before = new Map(from.map(({ pigment, share }) => [pigment, share]));
  const after = new Map(to.map(({ pigment, share }) => [pigment, share]));
  const kept = [...before.keys()].filter((pigment) => after.has(pigment));
  if (kept.length === 0) return `another pile: ${listed(to.map(({ pigment }) => nameOf(pigment)))}`;
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
    .filter(({ factor }) => size(factor) >= UNSAID)
    .sort((p, q) => q.factor - p.factor);
}

const size = (factor: number): number => Math.max(factor, 1 / factor);
/** Few words first, then small changes. */
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

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
