import type { Lab } from '../colour/lab.ts';
import type { Mixture } from '../mixture/mixture-types.ts';
import { mixtureVolumesOf } from '../mixture/pile-parts.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Cloth, Fold, Garment } from './cloth-types.ts';
import { glazedColour, internalReflectance } from './glaze-selection.ts';

/** One coat of a passage. */
interface FormulaLayer {
  readonly film: 'body colour' | 'glaze';
  /** For a glaze: its one pigment, with the colour seen through it. */
  readonly mixture: Mixture;
  readonly filmMm?: number;
  readonly note: string;
}

/** One passage of a formula. */
export interface FormulaPassage {
  readonly name: string;
  /** Lowest first. */
  readonly layers: readonly FormulaLayer[];
}

/** A named recipe for the passages of one subject; the book adds its date and source. */
export interface Formula {
  readonly name: string;
  readonly note: string;
  readonly subject: string;
  readonly passages: readonly FormulaPassage[];
}

export type FormulaHead = Pick<Formula, 'name' | 'note' | 'subject'>;

/**
 * The formula of a drapery: a passage per fold, first the cloth's, then the lining's and the
 * trim's.
 */
export function formulaOf(garment: Garment | Cloth, head: FormulaHead, shelf: Shelf): Formula {
  const cloths: readonly (readonly [string, Cloth])[] = [
    ['', garment],
    ...('lining' in garment && garment.lining ? [['lining, ', garment.lining] as const] : []),
    ...('trim' in garment && garment.trim ? [['trim, ', garment.trim] as const] : []),
  ];
  const passages = cloths.flatMap(([where, { folds, reflected }]) =>
    [...folds, ...(reflected ? [reflected] : [])].map(
      (fold): FormulaPassage => ({ name: `${where}${fold.step}`, layers: layersOf(fold, shelf) }),
    ),
  );
  return { ...head, passages };
}

/** A formula from existing piles: a harmony, or passages assembled by hand. */
export function formulaOfPiles(
  piles: readonly { readonly name: string; readonly mixture: Mixture }[],
  head: FormulaHead,
): Formula {
  return {
    ...head,
    passages: piles.map(({ name, mixture }) => ({
      name,
      layers: [{ film: 'body colour', mixture, note: '' }],
    })),
  };
}

function layersOf(fold: Fold, shelf: Shelf): FormulaLayer[] {
  const body: FormulaLayer = { film: 'body colour', mixture: fold.mixture, note: '' };
  if (fold.glaze === null) return [body];
  const { pigment, filmMm } = fold.glaze;
  const paint = shelf.paints.find((one) => one.pigment === pigment)!;
  const partsLab: Lab = glazedColour(
    paint,
    filmMm,
    internalReflectance(mixtureVolumesOf(fold.mixture), shelf),
    shelf,
  );
  const mixture: Mixture = {
    recipe: [{ pigment, share: 1 }],
    lab: fold.lab,
    deltaE00: fold.deltaE00,
    reachable: fold.deltaE00 <= 1,
    parts: [{ pigment, parts: 1 }],
    partsLab,
    partsDeltaE00: fold.deltaE00,
  };
  return [
    { ...body, note: 'dry and lean before it is glazed' },
    { film: 'glaze', mixture, filmMm, note: `about ${Math.round(1000 * filmMm)} micrometres` },
  ];
}

/** Every pigment of a formula, in order of first use. */
export const pigmentsIn = (formula: Formula): string[] => [
  ...new Set(
    formula.passages.flatMap(({ layers }) =>
      layers.flatMap(({ mixture }) => mixtureVolumesOf(mixture).map(({ pigment }) => pigment)),
    ),
  ),
];
