import { turnWords } from '../colour/difference-components.ts';
import { namedHueOf } from '../colour/hue-family.ts';
import type { Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import type { AddFault, PileCorrection } from '../mixture/correct-pile.ts';
import { REACHABLE_DELTA_E } from '../mixture/mixture-types.ts';
import type { MixFault } from '../mixture/search-options.ts';
import type { Axis, Shortfall } from '../mixture/shortfall.ts';
import type { NumberFormat } from '../number-format.ts';
import { joinWords } from '../wording.ts';

/** Message for a fault, then what to do. @param labelOf display name of a pigment */
export function mixFaultWords(
  fault: MixFault,
  labelOf: (pigment: string) => string = (pigment) => pigment,
): string {
  switch (fault.code) {
    case 'nothing-left':
      return 'No pigment is left to mix with. Allow more of the shelf.';
    case 'not-on-shelf':
      return `${labelOf(fault.pigment)} is not on the shelf. Add it, or ask for another.`;
    case 'wanted-and-left-out':
      return `${labelOf(fault.pigment)} is asked for in every pile, and left out as well. Give up one of the two wishes.`;
    case 'wanted-apart':
      return `${labelOf(fault.pigments[0])} and ${labelOf(fault.pigments[1])} are both asked for, but may not go into one pile. Give up one of them.`;
    case 'more-wanted-than-most':
      return `${fault.wanted} pigments are asked for in a pile of at most ${fault.most}. Ask for fewer, or allow more.`;
    case 'not-a-colour':
      return `Colour ${fault.index + 1} is not a colour: its numbers are missing. Choose it again.`;
    case 'stopped':
      return 'The search was stopped. Nothing has changed.';
  }
}

/** Message for a fault of the correction of a pile, then what to do. */
export function addFaultWords(fault: AddFault, labelOf?: (pigment: string) => string): string {
  if (fault.code === 'empty-batch')
    return 'The pile is empty: no part is above zero. Say what went into it.';
  if (fault.code !== 'not-a-colour') return mixFaultWords(fault, labelOf);
  const which = fault.index === 0 ? 'The colour that the pile turned out to be' : 'The target';
  return `${which} is not a colour: its numbers are missing. Choose it again.`;
}

/** Message on why a fresh pile is better. */
export function startAgainWords(
  { why, fresh }: NonNullable<PileCorrection['startAgain']>,
  number: NumberFormat,
): string {
  const comes = fresh <= 1 ? 'gets there' : `comes within ${number(fresh, 1)}`;
  return why === 'too-much'
    ? `What is missing is more than twice the pile. Start again: a fresh pile ${comes}.`
    : `Paint can only be added, and nothing added brings this pile there. Start again: a fresh pile ${comes}.`;
}

/** One sentence: how the target exceeds the shelf, what the nearest mixture keeps and gives up. */
export function shortfallWords({ axis, steps, kept, target }: Shortfall): string {
  const { word, family } = namedHueOf(target);
  const any = ['grey', 'black', 'white'].includes(family) ? 'colour' : word;
  const beyond = {
    chroma: steps.chroma < 0 ? `brighter than any ${any}` : `greyer than any ${any}`,
    lightness: steps.value < 0 ? `lighter than any ${any}` : `deeper than any ${any}`,
    hue: `${turn(target, steps.hue)} than any colour so light and so bright`,
  }[axis];
  const lost = (
    Object.entries({ chroma: steps.chroma, lightness: steps.value, hue: steps.hue }) as [
      Axis,
      number,
    ][]
  )
    .filter(([name, size]) => name === axis || Math.abs(size) > 2 * REACHABLE_DELTA_E)
    .map(([name]) => name);
  const keeps = kept.length > 0 ? `keeps the ${joinWords(kept)} and ` : '';
  return `This is ${beyond} on the shelf; the nearest ${keeps}gives up ${joinWords(lost)}.`;
}

/** Word for the hue direction from the mixture to the target, opposite to the step. */
function turn(target: Lab, step: number): string {
  const [back, on] = turnWords(oklabHueDeg(oklabOfLab(target)) ?? 0);
  return step < 0 ? on : back;
}
