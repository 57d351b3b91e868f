import { changeWords } from '../colour/change-words.ts';
import type { DraperyFault } from '../drapery/cloth-types.ts';
import type { ClothRemark } from '../drapery/drapery-remarks.ts';
import { joinWords } from '../wording.ts';

/** The sentence for a fault: what happened, then what to do. Mixture faults have their own. */
export function draperyFaultWords(
  fault: Extract<DraperyFault, { code: 'no-range' | 'no-glaze' | 'wants-more' }>,
  labelOf: (pigment: string) => string = (pigment) => pigment,
): string {
  switch (fault.code) {
    case 'no-range':
      return `These pigments have not six lightnesses for “${fault.name}”. Allow more of them, or choose another colour.`;
    case 'no-glaze':
      return fault.pigment === null
        ? `No transparent pigment of the hue of “${fault.name}” is on the shelf. Name a glaze, or choose another way.`
        : `${labelOf(fault.pigment)} makes no glaze here: it covers, or is not on the shelf. Name another, or choose another way.`;
    case 'wants-more':
      return fault.what === 'ladder'
        ? `“${fault.name}” as nature had it wants the six steps of a photograph. Gather one, or choose another way.`
        : `“${fault.name}” as shot cloth wants the colour of its shadows. Choose it, or choose another way.`;
  }
}

/** The sentence for a remark on a cloth. */
export function clothRemarkWords(remark: ClothRemark): string {
  switch (remark.code) {
    case 'held-back':
      return 'The local colour is held back below the wish, so that its lights have room.';
    case 'laid-lighter':
      return 'The local colour is laid lighter than the wish, so that its shadows have room.';
    case 'weaker':
      return `The shelf has it no stronger: it is ${changeWords(remark.wanted, remark.local)}.`;
    case 'out-of-reach':
      return `The shelf does not reach the ${joinWords(remark.steps)}: this is the nearest.`;
    case 'hue-lost':
      return `The hue cannot be held in the ${joinWords(remark.steps)}${remark.isGlazed ? ' under this glaze, though it is kept thin' : ' by this shelf'}.`;
    case 'glaze':
      return `The ${remark.pigment} glaze goes over dry, lean body colour, with no white in it and more oil than beneath.`;
    case 'glaze-lifts':
      return `In the ${joinWords(remark.steps)} the body colour is deeper than the glaze, which lifts it a little.`;
    case 'two-coats':
      return 'Lay the glaze of the folds in two thin coats: one thick coat dies back.';
  }
}
