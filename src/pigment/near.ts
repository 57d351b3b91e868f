import { changeWords } from '../colour/change.ts';
import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf } from './shelf.ts';
import { masstone } from './white.ts';

/** The paint whose masstone a colour is nearest to, and what it would take to get there. */
export interface Near {
  readonly pigment: string;
  readonly label: string;
  /** CIEDE2000 from the masstone to the colour. */
  readonly deltaE00: number;
  /** "lighter, duller"; empty where no difference is seen. */
  readonly change: string;
  /** "near red earth, lighter, duller", or "red earth" where no difference is seen. */
  readonly words: string;
}

const SEEN = 1;

/** A colour told by the paint of the shelf that is nearest to it; null for an empty shelf. */
export function nearOf(lab: Lab, shelf: Shelf): Near | null {
  const nearest = masstonesOf(shelf)
    .map((one) => ({ ...one, difference: deltaE00(one.lab, lab) }))
    .reduce<(Masstone & { difference: number }) | null>(
      (best, one) => (best === null || one.difference < best.difference ? one : best),
      null,
    );
  if (nearest === null) return null;
  const { pigment, label, difference } = nearest;
  const name = label === pigment ? label : inSentence(label);
  const change = difference <= SEEN ? '' : changeWords(nearest.lab, lab);
  const words = change === '' ? name : `near ${name}, ${change}`;
  return { pigment, label, deltaE00: difference, change, words };
}

interface Masstone {
  readonly pigment: string;
  readonly label: string;
  readonly lab: Lab;
}

/** Masstones are asked for on every redraw and never change: kept as long as the shelf is. */
const KNOWN = new WeakMap<Shelf, readonly Masstone[]>();

/** The masstone of every paint of a shelf, in its order. */
export function masstonesOf(shelf: Shelf): readonly Masstone[] {
  const known = KNOWN.get(shelf);
  if (known !== undefined) return known;
  const made = shelf.paints.map(({ pigment, label, paint }) => ({
    pigment,
    label,
    lab: masstone(paint, shelf.surface),
  }));
  KNOWN.set(shelf, made);
  return made;
}

/** A label of ours within a sentence: small first letter, unless it is a place (Naples). A file's names stay as they are. */
export function inSentence(label: string): string {
  if (/^(Prussian|Naples|Cassel|[A-Z]{2})/.test(label)) return label;
  return label.charAt(0).toLowerCase() + label.slice(1);
}
