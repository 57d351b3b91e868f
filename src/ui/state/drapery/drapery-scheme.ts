import { batch, signal } from '@preact/signals';
import type { Lab } from '../../../colour/lab.ts';
import type { ClothRequest, DraperyWay, GarmentRequest } from '../../../drapery/cloth-types.ts';
import type { Fabric } from '../../../drapery/fabric.ts';
import { undoHistory } from '../undo-history.ts';

/** A garment of the scheme: the requested cloth, and its share. */
export interface SchemeGarment {
  readonly wish: GarmentRequest;
  /** Relative weight among the garments; need not sum to 1. */
  readonly share: number;
}

/** Everything that the painter decided: the state that undo restores. */
export interface Scheme {
  readonly name: string;
  /** Id of the saved harmony that the colours come from; null if there is none. */
  readonly harmony: string | null;
  readonly garments: readonly SchemeGarment[];
}

/** A colour that a cloth can take. */
export interface ColourOption {
  readonly name: string;
  readonly lab: Lab;
  /** Of the source's area, 0…1. */
  readonly share: number;
  readonly accent: boolean;
  /** Six steps from the photograph, lightest first. */
  readonly ladder?: readonly Lab[];
}

export const EMPTY_SCHEME: Scheme = { name: '', harmony: null, garments: [] };
export const MOST_GARMENTS = 4;

export const scheme = signal<Scheme>(EMPTY_SCHEME);
/** Index of the selected garment. */
export const selectedGarment = signal(0);
const past = undoHistory<Scheme>();
export const { canUndo: canUndoScheme } = past;

/** A cloth of a garment. */
export type GarmentPart = 'cloth' | 'lining' | 'trim';

/** Replaces the scheme, as one undo step. @param look index of the garment to select */
function changeScheme(next: Scheme, look = selectedGarment.peek()): void {
  batch(() => {
    past.push(scheme.value);
    scheme.value = next;
    selectedGarment.value = Math.max(0, Math.min(look, next.garments.length - 1));
  });
}

export function undoScheme(): void {
  batch(() => {
    const last = past.pop();
    if (!last) return;
    scheme.value = last;
    selectedGarment.value = Math.max(0, Math.min(selectedGarment.value, last.garments.length - 1));
  });
}

/** Replaces the scheme and clears the undo history. */
export function loadScheme(next: Scheme): void {
  batch(() => {
    past.clear();
    scheme.value = next;
    selectedGarment.value = 0;
  });
}

/** Sets the name without an undo step, because it changes with every letter. */
export const setSchemeName = (name: string): void => {
  scheme.value = { ...scheme.value, name };
};

export function replaceGarment(at: number, worn: SchemeGarment): void {
  changeScheme({
    ...scheme.value,
    garments: scheme.value.garments.map((one, i) => (i === at ? worn : one)),
  });
}

export function addGarment(worn: SchemeGarment, harmony = scheme.value.harmony): void {
  const garments = [...scheme.value.garments, worn];
  changeScheme({ ...scheme.value, harmony, garments }, garments.length - 1);
}

export function removeGarment(at: number): void {
  changeScheme({ ...scheme.value, garments: scheme.value.garments.filter((_, i) => i !== at) });
}

export const clothOfPart = (wish: GarmentRequest, part: GarmentPart): ClothRequest | undefined =>
  part === 'cloth' ? wish : wish[part];

/** Replaces one cloth of a garment; null removes a lining or trim, and leaves the main cloth. */
export function withPart(
  worn: SchemeGarment,
  part: GarmentPart,
  cloth: ClothRequest | null,
): SchemeGarment {
  const { lining, trim, ...own } = worn.wish;
  const parts = {
    ...(lining ? { lining } : {}),
    ...(trim ? { trim } : {}),
  };
  if (part === 'cloth') return cloth ? { ...worn, wish: { ...clothOnly(cloth), ...parts } } : worn;
  const { [part]: _, ...rest } = parts;
  return { ...worn, wish: { ...own, ...rest, ...(cloth ? { [part]: clothOnly(cloth) } : {}) } };
}

/** A cloth's own request, without the lining and trim of a garment. */
export function clothOnly(wish: GarmentRequest | ClothRequest): ClothRequest {
  const { lining: _l, trim: _t, ...own } = wish as GarmentRequest;
  return own;
}

/** A request for a cloth in an offered colour. */
export const clothFromColour = (
  { name, lab, ladder }: ColourOption,
  stuff: Fabric = 'wool',
  way: DraperyWay = 'deepened in its own hue',
): ClothRequest => ({ name, lab, way, stuff, ...(ladder ? { ladder } : {}) });

/**
 * First scheme of a harmony: its two largest colours as garments, its accent (else the third
 * largest) as trim of the first.
 */
export function schemeFromColours(
  name: string,
  harmony: string | null,
  colours: readonly ColourOption[],
): Scheme {
  const large = colours.filter(({ accent }) => !accent).toSorted((x, y) => y.share - x.share);
  const edge = colours.find(({ accent }) => accent) ?? large[2];
  const garments = large.slice(0, 2).map((colour, i): SchemeGarment => {
    const wish: GarmentRequest = {
      ...clothFromColour(colour, i === 0 ? 'wool' : 'linen'),
      ...(i === 0 && edge ? { trim: clothFromColour(edge, 'satin') } : {}),
    };
    return { wish, share: colour.share };
  });
  return { name, harmony, garments };
}
