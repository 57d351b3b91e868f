/**
 * Calibration: fits the painter's own K and S to painted swatches, measured curves and logged piles.
 * The functions in the order in which a shell calls them:
 *
 * 1. planCards() lays out the swatch cards, drawCard() draws one as SVG, and planOf() reads the
 *    layout back from that file. {@link cardPaintOf} builds a card's paint from a pigment id.
 * 2. readCard() reads a photograph of a card, readTouched() is the manual way. Both return a
 *    `Reading` or a `CalibrationFault`. `options.corners` are the corner marks as touched by the
 *    user, `options.references` the known colours of white and grey, `options.chart` a 24-patch
 *    chart, whose values come from readChart().
 * 3. readSpectra() reads measured curves; guessTable() and measuredSwatches() map them to pigments;
 *    spectraCsv() and spectraCgats() export them.
 * 4. {@link photographedSwatches} and measuredSwatches() return swatches; a `LoggedPile`
 *    is a swatch too. calibratePaints() fits the paints of {@link paintsToFit}; its result has the
 *    predicted and the observed colour of each swatch for review.
 * 5. {@link acceptCalibration} stores the fitted curves in a copy of the stock.
 * 6. suggestSwatches() recommends the next swatches to paint. accuracyOf() measures past predictions.
 *    evidenceOfCurve() and mixtureError() give the evidence for each pigment and the expected
 *    error of a mixture.
 *
 * All functions are pure: dates, pixels and texts are arguments. The shell stores the swatches
 * (plain data except for R, BANDS numbers) and fits again when there are more.
 */

import { curveOfEntry } from '../pigment/mixing-shelf.ts';
import { pasteOf } from '../pigment/paste.ts';
import { pigmentOf } from '../pigment/pigment-facts.ts';
import { pigmentGrind } from '../pigment/pigment-grind.ts';
import type { Stock, StockEntry } from '../pigment/stock.ts';
import { labelOf } from '../pigment/stock-label.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Calibration, FittedPaint, PaintToFit } from './calibrate-paints.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import { evidenceOfFit } from './curve-evidence.ts';
import type { PaintedSwatch } from './painted-swatch.ts';
import type { CardPaint } from './swatch-card.ts';
import type { SwatchCardReading } from './swatch-card-reading.ts';

/** A card's paint from a pigment id: name, density of its paste (g/cm3) and hazard. */
export function cardPaintOf(pigment: string, label?: string): CardPaint {
  const facts = pigmentOf(pigment);
  const grind = pigmentGrind(pigment);
  const toxic = facts !== null && facts.hazard.level !== 'low';
  return {
    pigment,
    label: label ?? facts?.name ?? pigment,
    density: grind.ok ? pasteOf(grind.value).density : null,
    caution: toxic ? `${facts.hazard.sentence} ${facts.hazard.caution}`.trim() : '',
  };
}

/**
 * The paints of stock entries for a fit. `pigment` is the entry's id: each lot is a paint of its
 * own.
 */
export function paintsToFit(stock: Stock, entries: readonly StockEntry[]): PaintToFit[] {
  return entries.map((entry) => ({
    pigment: entry.id,
    label: labelOf(stock, entry),
    // The built-in curve, not an earlier fit: its swatches would count twice.
    named: curveOfEntry({ ...stock, own: [] }, { ...entry, curve: null }),
  }));
}

/** The painted places of a reading as swatches. @param date ISO date */
export function photographedSwatches(
  { places, sd }: SwatchCardReading,
  date: string,
  id: (place: number) => string = (place) => `place:${place}`,
): PaintedSwatch[] {
  return places.map(({ place, lab }) => ({
    id: id(place.number),
    parts: place.parts,
    kind: 'photographed',
    lab,
    R: null,
    sd,
    date,
  }));
}

/** The part of a {@link Calibration} that {@link acceptCalibration} needs. */
export type FittedCurves = Pick<Calibration, 'white' | 'paints'>;

/** The paints that were fitted: all except a white without swatches. */
export const fittedPaintsOf = ({ white, paints }: FittedCurves): readonly FittedPaint[] =>
  paints.filter(({ pigment, swatches }) => pigment !== white || swatches > 0);

/**
 * Stores fitted curves with their evidence in the entries that the calibration's pigments name by
 * id. Returns a new stock; the old one serves undo.
 * @param date ISO date
 */
export function acceptCalibration(
  stock: Stock,
  calibration: FittedCurves,
  date: string,
): Result<Stock, CalibrationFault> {
  const fitted = fittedPaintsOf(calibration);
  const missing = fitted.find(({ pigment }) => !stock.entries.some(({ id }) => id === pigment));
  if (missing) return fail({ code: 'swatch-paint-unknown', pigment: missing.label });
  const entries = stock.entries.map((entry): StockEntry => {
    const found = fitted.find(({ pigment }) => pigment === entry.id);
    if (!found) return entry;
    const { known: _, ...trust } = evidenceOfFit(found, date);
    const { known, paint } = found;
    const [K, S] = [Array.from(paint.K), Array.from(paint.S)];
    return { ...entry, curve: { known, K, S, trust: { ...trust, date } } };
  });
  return ok({ ...stock, entries });
}

/**
 * A copy of the stock in which these entries have no curve of their own: the inverse of
 * {@link acceptCalibration}.
 */
export const removeCalibration = (stock: Stock, ids: readonly string[]): Stock => ({
  ...stock,
  entries: stock.entries.map((entry) =>
    ids.includes(entry.id) ? { ...entry, curve: null } : entry,
  ),
});
