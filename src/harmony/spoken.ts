import type { Shelf } from '../pigment/shelf.ts';

/** What a person reads for a pigment within a sentence: a small first letter, unless the word is a name. */
export function spokenOn(shelf: Shelf): (pigment: string) => string {
  const labels = new Map(shelf.paints.map(({ pigment, label }) => [pigment, label]));
  return (pigment) => {
    const label = labels.get(pigment) ?? pigment;
    if (/^(Prussian|Naples|Cassel|[A-Z]{2})/.test(label)) return label;
    return label.charAt(0).toLowerCase() + label.slice(1);
  };
}
