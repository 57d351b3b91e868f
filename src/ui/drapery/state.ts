import { batch, signal } from '@preact/signals';
import type { Lab } from '../../colour/lab.ts';
import type { ClothWish, DraperyWay, GarmentWish } from '../../drapery/fold.ts';
import type { Stuff } from '../../drapery/stuff.ts';
import { history } from '../state/history.ts';

/** A garment of the scheme: what is wished of it, and how much of the whole it takes. */
export interface Worn {
  readonly wish: GarmentWish;
  /** Compared with the other garments only. */
  readonly share: number;
}

/** Everything that the painter decided: what undo brings back. */
export interface Scheme {
  readonly name: string;
  /** The kept harmony that its colours come from; null where there is none. */
  readonly harmony: string | null;
  readonly garments: readonly Worn[];
}

/** A colour that a cloth can take. */
export interface Offered {
  readonly name: string;
  readonly lab: Lab;
  readonly share: number;
  readonly accent: boolean;
  /** Six steps as a photograph has them. */
  readonly ladder?: readonly Lab[];
}

export const EMPTY: Scheme = { name: '', harmony: null, garments: [] };
export const MOST_GARMENTS = 4;

export const scheme = signal<Scheme>(EMPTY);
/** Index of the garment that is looked at. */
export const chosen = signal(0);
const past = history<Scheme>();
export const { canUndo } = past;

/** Which of a garment's cloths a change is meant for. */
export type Part = 'cloth' | 'lining' | 'trim';

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

/** Shows another scheme; what was done to the last one can no longer be undone. */
export function show(next: Scheme): void {
  batch(() => {
    past.clear();
    scheme.value = next;
    chosen.value = 0;
  });
}

/** The name is typed letter by letter: no step of undo each. */
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

/** A garment whose cloth, lining or trim is another; null takes a lining or a trim away. */
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

/** A cloth's own wishes, without the lining and the trim of a garment. */
export function bare(wish: GarmentWish | ClothWish): ClothWish {
  const { lining: _l, trim: _t, ...own } = wish as GarmentWish;
  return own;
}

/** A cloth of an offered colour. */
export const clothOf = (
  { name, lab, ladder }: Offered,
  stuff: Stuff = 'wool',
  way: DraperyWay = 'deepened in its own hue',
): ClothWish => ({ name, lab, way, stuff, ...(ladder ? { ladder } : {}) });

/** The first scheme of a harmony: its two largest colours as garments, its accent as the trim of the first. */
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
