import { changeWords } from '../colour/change-words.ts';
import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { midSentence } from '../wording.ts';
import { masstone } from './masstone.ts';
import type { Shelf } from './shelf.ts';

/** The paint with the masstone nearest to a colour, and the change from it to the colour. */
interface NearestMasstone {
  readonly pigment: string;
  readonly label: string;
  /** CIEDE2000 from the masstone to the colour. */
  readonly deltaE00: number;
  /** "lighter, duller"; empty if no difference is visible. */
  readonly change: string;
  /** "near red earth, lighter, duller", or "red earth" if no difference is visible. */
  readonly words: string;
}

/** CIEDE2000 up to which no difference is visible. */
const SEEN = 1;

/**
 * Describes a colour (CIELAB, D65) by the nearest masstone of the shelf; null for an empty shelf.
 */
export function nearestMasstoneOf(lab: Lab, shelf: Shelf): NearestMasstone | null {
  const nearest = masstonesOf(shelf)
    .map((one) => ({ ...one, difference: deltaE00(one.lab, lab) }))
    .reduce<(Masstone & { difference: number }) | null>(
      (best, one) => (best === null || one.difference < best.difference ? one : best),
      null,
    );
  if (nearest === null) return null;
  const { pigment, label, difference } = nearest;
  const name = label === pigment ? label : midSentence(label);
  const change = difference <= SEEN ? '' : changeWords(nearest.lab, lab);
  const words = change === '' ? name : `near ${name}, ${change}`;
  return { pigment, label, deltaE00: difference, change, words };
}

interface Masstone {
  readonly pigment: string;
  readonly label: string;
  readonly lab: Lab;
}

/** Cache of masstones, needed on every redraw; dropped with the shelf. */
const KNOWN = new WeakMap<Shelf, readonly Masstone[]>();

/** Masstones of all paints of a shelf, in its order; cached per shelf object. */
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
