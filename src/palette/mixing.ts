import type { PilePlan } from './day.ts';
import { cm3Words, oilCm3Down, within } from './figure.ts';
import { factsOf } from './known.ts';
import { labelIn, type Studio } from './passage.ts';

const STRENGTH = ['very low', 'low', 'medium', 'high', 'very high'] as const;

/** Weak before strong, much before little: a strong pigment is worked in by small touches. */
function mixingOrder(plan: PilePlan): PilePlan['pile']['parts'] {
  const strength = (pigment: string, letDown = false) =>
    letDown ? -1 : STRENGTH.indexOf(factsOf(pigment)?.strength.word ?? 'medium');
  const first = plan.pile.parts.reduce((most, one) => (one.parts > most.parts ? one : most));
  return plan.pile.parts.toSorted(
    (a, b) =>
      Number(b === first) - Number(a === first) ||
      strength(a.pigment, a.letDown) - strength(b.pigment, b.letDown) ||
      b.parts - a.parts,
  );
}

/** How a pile is mixed, step by step. */
export function mixingSteps(plan: PilePlan, studio: Studio): readonly string[] {
  const name = (pigment: string) => within(labelIn(studio, pigment));
  const steps = plan.amount.letDowns.map(
    ({ pigment, white, whiteParts, cm3 }) =>
      `First let down 1 part ${name(pigment)} with ${whiteParts} parts ${name(white)}: ${cm3Words(cm3)} of it goes in here.`,
  );
  const [first, ...rest] = mixingOrder(plan);
  if (first !== undefined && rest.length > 0) {
    const adds = rest.map(
      ({ pigment, letDown }) => `${name(pigment)}${letDown ? ' let down' : ''}`,
    );
    const last = adds.pop()!;
    steps.push(
      `Begin with ${name(first.pigment)}${first.letDown ? ' let down' : ''}; work in ${
        adds.length > 0 ? `${adds.join(', ')}, and last ` : ''
      }${last}, by touches.`,
    );
  }
  const oil = oilCm3Down(plan.amount.spareOil);
  if (oil > 0) steps.push(`Stir in at most ${oil} cm³ of oil, by drops; three quarters first.`);
  return steps;
}
