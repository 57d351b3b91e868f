import { cm3Words } from '../messages/amounts.ts';
import type { NumberFormat } from '../number-format.ts';
import type { PilePlan } from '../palette/day-plan.ts';
import { labelIn, type Studio } from '../palette/passage.ts';
import { factsOf } from '../palette/pigment-lookup.ts';
import { oilCm3Down } from '../palette/rounded-amounts.ts';
import { midSentence } from '../wording.ts';

const STRENGTH = ['very low', 'low', 'medium', 'high', 'very high'] as const;

/**
 * The parts in mixing order: first the largest part, then weak pigments before strong and large
 * parts before small; strong ones are added by touches.
 */
export function mixingStepOrder({ pile: { parts } }: PilePlan): PilePlan['pile']['parts'] {
  const strength = (pigment: string, letDown = false) =>
    letDown ? -1 : STRENGTH.indexOf(factsOf(pigment)?.strength.word ?? 'medium');
  const bed = parts.reduce((most, one) => (one.parts > most.parts ? one : most));
  return parts.toSorted(
    (a, b) =>
      Number(b === bed) - Number(a === bed) ||
      strength(a.pigment, a.letDown) - strength(b.pigment, b.letDown) ||
      b.parts - a.parts,
  );
}
export const MIXING_WORDS =
  'Mix in the order written: the first is the bed, each next is worked in by touches.';

/** Instructions besides the parts: let-downs first, oil last. */
export function mixingSteps(
  plan: PilePlan,
  studio: Studio,
  number: NumberFormat,
): readonly string[] {
  const name = (pigment: string) => midSentence(labelIn(studio, pigment));
  const steps = plan.amount.letDowns.map(
    ({ pigment, white, whiteParts, cm3 }) =>
      `First let down 1 part ${name(pigment)} with ${number(whiteParts, 0, 2)} parts ${name(white)}: ${cm3Words(cm3, number)} of it goes in here.`,
  );
  const oil = oilCm3Down(plan.amount.spareOil);
  if (oil > 0)
    steps.push(
      `Last, at most ${number(oil, 0, 2)} cm³ of oil by drops; begin with three quarters.`,
    );
  return steps;
}
