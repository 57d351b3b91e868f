import type { Shelf } from '../pigment/shelf.ts';

/** Pigment names as written within a sentence: lower-case first letter, except for proper names. */
export function spokenOn(shelf: Shelf): (pigment: string) => string {
  const labels = new Map(shelf.paints.map(({ pigment, label }) => [pigment, label]));
  return (pigment) => {
    const label = labels.get(pigment) ?? pigment;
    if (/^(Prussian|Naples|Cassel|[A-Z]{2})/.test(label)) return label;
    return label.charAt(0).toLowerCase() + label.slice(1);
  };
}
