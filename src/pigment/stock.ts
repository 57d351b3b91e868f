import type { Surface } from '../optics/surface.ts';
import type { HazardLevel, PigmentFamily } from './pigment-facts.ts';

/** Expected error of predicted mixtures (CIEDE2000). */
export interface ErrorQuantiles {
  /** Median error. */
  readonly median: number;
  /** 90th percentile: one mixture in ten has a larger error. */
  readonly tenth: number;
}

/** Evidence for a pigment's curve and the expected error of its mixtures. */
export interface CurveEvidence {
  readonly known: 'handbook' | 'photographed' | 'measured';
  /** Whether only its masstone is known. */
  readonly rough: boolean;
  /** ISO date of the calibration; null for the handbook. */
  readonly date: string | null;
  readonly swatches: number;
  readonly piles: number;
  readonly expected: ErrorQuantiles;
}

/** Physical form of a paint in stock. */
export type StockForm = 'powder' | 'paste' | 'tube';
export type Unit = 'g' | 'ml';

/** Units of each form, the default first. */
export const UNITS = {
  powder: ['g'],
  paste: ['g', 'ml'],
  tube: ['ml', 'g'],
} as const satisfies Record<StockForm, readonly Unit[]>;

/** Stored evidence and expected error of a fitted curve. */
export type StoredEvidence = Omit<CurveEvidence, 'known' | 'date'> & {
  /** ISO date of the fit. */
  readonly date: string;
};

/** Stored K and S on the grid (BANDS numbers each) with their provenance. */
export interface StoredCurve {
  readonly known: 'photographed' | 'measured';
  readonly K: readonly number[];
  readonly S: readonly number[];
  /**
   * Only for a curve that was fitted to swatches, not for one read from a file or from one colour.
   */
  readonly trust?: StoredEvidence;
}

/** One item of the stock: a pigment of one grade and lot. */
export interface StockEntry {
  readonly id: string;
  /** Id of a built-in pigment or of one of the studio's own pigments. */
  readonly pigment: string;
  /** "fine", "coarse, first wash"; may be empty. */
  readonly grade: string;
  readonly lot: string;
  readonly form: StockForm;
  /** Remaining amount in `unit`; null if unknown, 0 if used up. */
  readonly amount: number | null;
  readonly unit: Unit;
  /**
   * Measured for this lot (g/cm3; g of oil per 100 g), preferred to the handbook; null if not
   * measured.
   */
  readonly density: number | null;
  readonly oil: number | null;
  /** K and S of this lot; null to use those of its pigment. */
  readonly curve: StoredCurve | null;
  readonly note: string;
}

/** A pigment added by the user, not in our facts. Its id starts with `own:`. */
export interface OwnPigment {
  readonly id: string;
  readonly name: string;
  readonly synonyms: readonly string[];
  readonly family: PigmentFamily;
  readonly hazard: HazardLevel;
  /** Handling advice, in the painter's words. */
  readonly caution: string;
  readonly density: number | null;
  readonly oil: number | null;
  /** null until it is calibrated: it can be weighed but not mixed. */
  readonly curve: StoredCurve | null;
  readonly note: string;
}
export const OWN_ID_PREFIX = 'own:';

/** Everything that a studio has in stock. Immutable, so that undo can keep the old one. */
export interface Stock {
  readonly name: string;
  readonly surface: Surface;
  /** Id of the entry that is the studio's white. */
  readonly white: string | null;
  readonly entries: readonly StockEntry[];
  readonly own: readonly OwnPigment[];
}

export type StockDraft = Omit<StockEntry, 'id'>;

/** A new entry of a pigment, with defaults for all optional fields. */
export const draftOf = (pigment: string, form: StockForm = 'tube'): StockDraft => ({
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
