import type { Surface } from '../optics/surface.ts';
import type { Trust } from './calibrate/trust.ts';
import type { Family, HazardLevel } from './facts.ts';

/** In what state a paint stands on the shelf. */
export type StockForm = 'powder' | 'paste' | 'tube';
export type Unit = 'g' | 'ml';

/** What a form is measured in, the usual unit first. */
export const UNITS = {
  powder: ['g'],
  paste: ['g', 'ml'],
  tube: ['ml', 'g'],
} as const satisfies Record<StockForm, readonly Unit[]>;

/** How well a fitted curve is known. */
export type CurveTrust = Omit<Trust, 'known' | 'date'> & {
  /** ISO day on which it was fitted. */
  readonly date: string;
};

/** K and S on the grid as plain numbers, and how they are known. */
export interface KeptCurve {
  readonly known: 'photographed' | 'measured';
  readonly K: readonly number[];
  readonly S: readonly number[];
  /** Of a curve that was fitted to swatches; one read from a file or made of one colour has none. */
  readonly trust?: CurveTrust;
}

/** One thing on the shelf: a pigment of a grade and a lot. */
export interface StockEntry {
  readonly id: string;
  /** Id of a pigment of ours, or of one of the studio's own. */
  readonly pigment: string;
  /** "fine", "coarse, first wash"; empty where it has none. */
  readonly grade: string;
  readonly lot: string;
  readonly form: StockForm;
  /** What is left, in `unit`; null where nobody weighed it, 0 when it is used up. */
  readonly amount: number | null;
  readonly unit: Unit;
  /** The studio's own figures of this lot, preferred to the handbook's; null where not measured. */
  readonly density: number | null;
  readonly oil: number | null;
  /** K and S of this very lot; null: those of its pigment. */
  readonly curve: KeptCurve | null;
  readonly note: string;
}

/** A pigment that the handbooks' list does not hold. Its id starts with `own:`. */
export interface OwnPigment {
  readonly id: string;
  readonly name: string;
  readonly synonyms: readonly string[];
  readonly family: Family;
  readonly hazard: HazardLevel;
  /** What to mind, in the painter's own words. */
  readonly caution: string;
  readonly density: number | null;
  readonly oil: number | null;
  /** null until it is calibrated: it can be weighed, but not yet mixed. */
  readonly curve: KeptCurve | null;
  readonly note: string;
}
export const OWN = 'own:';

/** Everything that a studio has. Never changed in place: the old one serves undo. */
export interface Stock {
  readonly name: string;
  readonly surface: Surface;
  /** Id of the entry that is the studio's white. */
  readonly white: string | null;
  readonly entries: readonly StockEntry[];
  readonly own: readonly OwnPigment[];
}

export type Draft = Omit<StockEntry, 'id'>;

/** A draft with everything that a painter may leave open. */
export const draftOf = (pigment: string, form: StockForm = 'tube'): Draft => ({
  pigment,
  grade: '',
  lot: '',
  form,
  amount: null,
  unit: UNITS[form][0],
  density: null,
  oil: null,
  curve: null,
  note: '',
});
