import type { DraperyFault } from '../drapery/cloth-types.ts';
import type { MixCode } from '../drapery/drapery-remarks.ts';
/** The sentence for a fault: what happened, then what to do. Mixture faults have their own. */
export function draperyFaultWords(
  fault: Exclude<DraperyFault, { code: MixCode }>,
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
