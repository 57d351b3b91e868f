import { batch, signal } from '@preact/signals';
import type { Lab } from '../../colour/lab.ts';
import type { ClothWish, DraperyWay, GarmentWish } from '../../drapery/fold.ts';
import type { Stuff } from '../../drapery/stuff.ts';
import { history } from '../state/history.ts';

/** A garment of the scheme: the requested cloth, and its share. */
export interface Worn {
  readonly wish: GarmentWish;
  /** Relative weight among the garments; need not sum to 1. */
  readonly share: number;
}

/** Everything that the painter decided: the state that undo restores. */
export interface Scheme {
  readonly name: string;
  /** Id of the saved harmony that the colours come from; null if there is none. */
  readonly harmony: string | null;
  readonly garments: readonly Worn[];
}

/** A colour that a cloth can take. */
export interface Offered {
  readonly name: string;
  readonly lab: Lab;
  /** Of the source's area, 0…1. */
  readonly share: number;
  readonly accent: boolean;
  /** Six steps from the photograph, lightest first. */
  readonly ladder?: readonly Lab[];
}

export const EMPTY: Scheme = { name: '', harmony: null, garments: [] };
export const MOST_GARMENTS = 4;

export const scheme = signal<Scheme>(EMPTY);
/** Index of the selected garment. */
export const chosen = signal(0);
const past = history<Scheme>();
export const { canUndo } = past;

/** A cloth of a garment. */
export type Part = 'cloth' | 'lining' | 'trim';

/** Replaces the scheme, as one undo step. @param look index of the garment to select */
export function change(next: Scheme, look = chosen.peek()): void {
  batch(() => {
    past.push(scheme.value);
    scheme.value = next;
    chosen.value = Math.max(0, Math.min(look, next.garments.length - 1));
  });
}

export function undo(): void {
  batch(() => {
    const last = past.pop();
    if (!last) return;
    scheme.value = last;
    chosen.value = Math.max(0, Math.min(chosen.value, last.garments.length - 1));
  });
}

/** Replaces the scheme and clears the undo history. */
export function show(next: Scheme): void {
  batch(() => {
    past.clear();
    scheme.value = next;
    chosen.value = 0;
  });
}

/** Sets the name without an undo step, because it changes with every letter. */
export const callIt = (name: string): void => {
  scheme.value = { ...scheme.value, name };
};

export function setWorn(at: number, worn: Worn): void {
  change({
    ...scheme.value,
    garments: scheme.value.garments.map((one, i) => (i === at ? worn : one)),
  });
}

export function addGarment(worn: Worn, harmony = scheme.value.harmony): void {
  const garments = [...scheme.value.garments, worn];
  change({ ...scheme.value, harmony, garments }, garments.length - 1);
}

export function removeGarment(at: number): void {
  change({ ...scheme.value, garments: scheme.value.garments.filter((_, i) => i !== at) });
}

export const partOf = (wish: GarmentWish, part: Part): ClothWish | undefined =>
  part === 'cloth' ? wish : wish[part];

/** Replaces one cloth of a garment; null removes a lining or trim, and leaves the main cloth. */
export function withPart(worn: Worn, part: Part, cloth: ClothWish | null): Worn {
  const { lining, trim, ...own } = worn.wish;
  const parts = {
    ...(lining ? { lining } : {}),
    ...(trim ? { trim } : {}),
  };
  if (part === 'cloth') return cloth ? { ...worn, wish: { ...bare(cloth), ...parts } } : worn;
  const { [part]: _, ...rest } = parts;
  return { ...worn, wish: { ...own, ...rest, ...(cloth ? { [part]: bare(cloth) } : {}) } };
}

/** A cloth's own request, without the lining and trim of a garment. */
export function bare(wish: GarmentWish | ClothWish): ClothWish {
  const { lining: _l, trim: _t, ...own } = wish as GarmentWish;
  return own;
}

/** A request for a cloth in an offered colour. */
export const clothOf = (
  { name, lab, ladder }: Offered,
  stuff: Stuff = 'wool',
  way: DraperyWay = 'deepened in its own hue',
): ClothWish => ({ name, lab, way, stuff, ...(ladder ? { ladder } : {}) });

/**
 * First scheme of a harmony: its two largest colours as garments, its accent (else the third
 * largest) as trim of the first.
 */
export function schemeOf(
  name: string,
  harmony: string | null,
  colours: readonly Offered[],
): Scheme {
  const large = colours.filter(({ accent }) => !accent).toSorted((x, y) => y.share - x.share);
  const edge = colours.find(({ accent }) => accent) ?? large[2];
  const garments = large.slice(0, 2).map((colour, i): Worn => {
    const wish: GarmentWish = {
      ...clothOf(colour, i === 0 ? 'wool' : 'linen'),
      ...(i === 0 && edge ? { trim: clothOf(edge, 'satin') } : {}),
    };
    return { wish, share: colour.share };
  });
  return { name, harmony, garments };
}
