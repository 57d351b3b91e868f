/**
 * Calibration: from painted swatches, measured curves and logged piles to the painter's own K and S.
 * What a shell calls, in the order of the work:
 *
 * 1. `planCards(white, paints, options)` (card.ts) lays out the swatch card, `drawCard(card)` (sheet.ts) is
 *    its SVG, `planOf(svg)` finds the plan in a printed file again. {@link cardPaintOf} makes a card's
 *    paint from a pigment's id, with the usual caution and the density of its paste.
 * 2. `readCard(pixels, card, options)` (read.ts) reads a photograph; `readTouched(pixels, touches)`
 *    (touch.ts) is the way by hand. Both give a `Reading` (reading.ts) or a `CalibrationFault`, whose
 *    sentence is `calibrationFaultWords` (fault.ts). `options.corners` are the four marks touched by hand;
 *    `options.references` what white and grey are known to be; `options.chart` a 24-patch chart:
 *    `readChart(text)` (chart.ts) for its values, its four corner patches as touched.
 * 3. `readSpectra(text)` (spectra.ts) reads measured curves; `guessTable` and `measuredSwatches`
 *    (samples.ts) map them to pigments; `spectraCsv` and `spectraCgats` export them.
 * 4. {@link photographedSwatches} and measuredSwatches give `Painted` swatches (swatches.ts); logged
 *    piles are `LoggedPile` (pile.ts), which are Painted too. `calibrate(white, paints, swatches, surface,
 *    options)` (fit.ts) fits them; its result shows each swatch foreseen beside seen, before anything is
 *    accepted. {@link paintsToFit} makes its paints from a stock.
 * 5. {@link accept} puts the fitted curves on a stock's entries. The old stock serves undo.
 * 6. `suggest(calibration, options)` (suggest.ts) says which pile to brush out next, and why;
 *    `accuracyOf(piles)` (pile.ts) how well piles were foreseen over time; `trustOf`, `trustWords`,
 *    `mixtureError` and `errorWords` (trust.ts) how each pigment is known and what to expect of a mixture.
 *
 * Everything is pure: dates, pixels and texts come in as arguments. Nothing is kept here; a shell keeps
 * the swatches (they are plain data but for R, BANDS numbers) and fits again when there are more.
 */
import { fail, ok, type Result } from '../../result.ts';
import { pigmentOf } from '../facts.ts';
import { labelOf } from '../label.ts';
import { curveOfEntry } from '../mixable.ts';
import { pasteOf } from '../paste.ts';
import type { Stock, StockEntry } from '../stock.ts';
import { grindOfPigment } from '../weigh.ts';
import type { CardPaint } from './card.ts';
import type { CalibrationFault } from './fault.ts';
import type { Calibration, FittedPaint, PaintToFit } from './fit.ts';
import type { Reading } from './reading.ts';
import type { Painted } from './swatches.ts';
import { trustOf } from './trust.ts';

/** A card's paint from a pigment's id: its name, the density of its paste, and what to mind. */
export function cardPaintOf(pigment: string, label?: string): CardPaint {
  const facts = pigmentOf(pigment);
  const grind = grindOfPigment(pigment);
  const toxic = facts !== null && facts.hazard.level !== 'low';
  return {
    pigment,
    label: label ?? facts?.name ?? pigment,
    density: grind.ok ? pasteOf(grind.value).density : null,
    caution: toxic ? `${facts.hazard.sentence} ${facts.hazard.caution}`.trim() : '',
  };
}

/** The paints of a stock's entries for a fit; `pigment` is the entry's id, for each lot is its own paint. */
export function paintsToFit(stock: Stock, entries: readonly StockEntry[]): PaintToFit[] {
  return entries.map((entry) => ({
    pigment: entry.id,
    label: labelOf(stock, entry),
    // The handbook's curve, not an earlier fit: its swatches are fitted again, and would count twice.
    named: curveOfEntry({ ...stock, own: [] }, { ...entry, curve: null }),
  }));
}

/** What a card's photograph showed, as swatches for a fit. */
export function photographedSwatches(
  { places, sd }: Reading,
  date: string,
  id: (place: number) => string = (place) => `place:${place}`,
): Painted[] {
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

/** What a fit gives of its paints: the part of a {@link Calibration} that acceptance needs. */
export type Fitted = Pick<Calibration, 'white' | 'paints'>;

/** The paints whose curves a fit has changed; a white that no swatch shows is taken as it was. */
export const learnt = ({ white, paints }: Fitted): readonly FittedPaint[] =>
  paints.filter(({ pigment, swatches }) => pigment !== white || swatches > 0);

/**
 * Puts fitted curves, with how each is known, on the entries whose ids the calibration's pigments are.
 * The stock that was given is not touched: keep it for undo.
 * @param date ISO day
 */
export function accept(
  stock: Stock,
  calibration: Fitted,
  date: string,
): Result<Stock, CalibrationFault> {
  const fitted = learnt(calibration);
  const missing = fitted.find(({ pigment }) => !stock.entries.some(({ id }) => id === pigment));
  if (missing) return fail({ code: 'swatch-paint-unknown', pigment: missing.label });
  const entries = stock.entries.map((entry): StockEntry => {
    const found = fitted.find(({ pigment }) => pigment === entry.id);
    if (!found) return entry;
    const { known: _, ...trust } = trustOf(found, date);
    const { known, paint } = found;
    const [K, S] = [Array.from(paint.K), Array.from(paint.S)];
    return { ...entry, curve: { known, K, S, trust: { ...trust, date } } };
  });
  return ok({ ...stock, entries });
}

/** A stock on which these entries have their pigments' curves again. */
export const forget = (stock: Stock, ids: readonly string[]): Stock => ({
  ...stock,
  entries: stock.entries.map((entry) =>
    ids.includes(entry.id) ? { ...entry, curve: null } : entry,
  ),
});
