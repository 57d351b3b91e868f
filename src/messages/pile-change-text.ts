import type { PigmentChange, PileChange } from '../harmony/pile-change.ts';
import { joinWords } from '../wording.ts';

/** Limits of "a little" and "much" for a factor of change. */
const LITTLE = 1.35;
const MUCH = 2.5;
/** Share of the pile below which a new pigment is "a touch". */
const TOUCH = 0.03;

/**
 * A change of a pile in words: "a little red earth more, less lead white".
 * @param nameOf pigment name as written within a sentence
 */
export function pileChangeWords(change: PileChange, nameOf: (pigment: string) => string): string {
  if (change.kind === 'other') return `another pile: ${joinWords(change.pigments.map(nameOf))}`;
  if (change.changes.length === 0) return 'the same pile';
  return change.changes.map((one) => pigmentChangeWords(one, nameOf(one.pigment))).join(', ');
}

function pigmentChangeWords({ factor, share }: PigmentChange, name: string): string {
  if (factor === 0) return `no ${name}`;
  if (factor === Number.POSITIVE_INFINITY)
    return share < TOUCH ? `a touch of ${name}` : `${name} added`;
  const isMore = factor > 1;
  const size = Math.max(factor, 1 / factor);
  if (size < LITTLE) return isMore ? `a little ${name} more` : `a little less ${name}`;
  const word = isMore ? 'more' : 'less';
  return size < MUCH ? `${word} ${name}` : `much ${word} ${name}`;
}
