import type { MixFault } from './find.ts';

/** What happened, then what to do. @param labelOf what a person reads for a pigment */
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
