import type { LoggedPile } from '../../calibration/logged-pile.ts';
import { inSpecularMode, type PaintedSwatch, type Part } from '../../calibration/painted-swatch.ts';
import { spectrum } from '../../colour/grid.ts';
import { labOf } from '../../colour/lab.ts';
import type { Surface } from '../../optics/surface.ts';
import type { Stock, StockEntry } from '../../pigment/stock.ts';
import type { LotUsed } from './calibration.ts';
import type { Entry } from './record.ts';

/** Estimated standard deviation of each of L*, a*, b* for a pile judged by eye only. */
const BY_EYE = 4;
/**
 * Estimated standard deviation for one pile photographed beside a white and a grey, where uneven
 * lighting cannot be detected.
 */
const TOUCHED = 1.5;

/**
 * The surface under which the book stores observed colours: specular reflection included, whichever
 * way the shelf is viewed today. So earlier readings stay the same when the painter changes that
 * setting.
 */
export const storedSurface = ({ surface }: Pick<Stock, 'surface'>): Surface => ({
  ...surface,
  specular: 'included',
});

/** Everything in the book that is evidence about the paints now on the shelf. */
export interface CalibrationEvidence {
  /** `pigment` of their parts is the id of an entry of the shelf. */
  readonly swatches: readonly PaintedSwatch[];
  /**
   * How many observations were left out because one of their paints is off the shelf or is now
   * another lot.
   */
  readonly ofOthers: number;
}

export interface EvidenceEntries {
  readonly cards: readonly Entry<'card'>[];
  readonly curves: readonly Entry<'curves'>[];
  readonly piles: readonly Entry<'pile'>[];
}

/** Converts swatches, measured samples and logged piles to the input of the calibration fit. */
export function collectEvidence(
  { cards, curves, piles }: EvidenceEntries,
  stock: Stock,
): CalibrationEvidence {
  const all = [
    ...cards.flatMap((card) => ofCard(card, stock)),
    ...curves.flatMap((file) => ofCurves(file, stock)),
    ...piles.map((pile) => loggedPile(pile, stock)),
  ];
  const swatches = all.filter((one) => one !== null);
  return { swatches, ofOthers: all.length - swatches.length };
}

/** Id of the swatch at one place of a card; used to leave it out of a fit. */
export const placeId = (card: string, number: number): string => `${card}/${number}`;
/** The card and place of a swatch id; null for ids of other observations. */
export function placeOfId(id: string): { readonly card: string; readonly number: number } | null {
  const [card, number] = id.split('/');
  return number === undefined || !/^\d+$/.test(number) ? null : { card: card!, number: +number };
}

/**
 * Whether the evidence has changed since the curves of the stock were fitted. Compares, per paint,
 * the number of swatches and piles that contain it. The white is skipped, because nearly all
 * contain it.
 */
export function hasUnfittedEvidence({ swatches }: CalibrationEvidence, stock: Stock): boolean {
  return stock.entries.some(({ id, curve }) => {
    if (id === stock.white) return false;
    const holding = swatches.filter(({ parts }) => parts.some(({ pigment }) => pigment === id));
    // A curve from another source was fitted to no swatch or pile.
    const known = curve?.trust ? curve.trust.swatches + curve.trust.piles : 0;
    return holding.length !== known;
  });
}

function ofCard({ id, body }: Entry<'card'>, stock: Stock): (PaintedSwatch | null)[] {
  const { plan, lots, leftOut, reading } = body;
  if (!reading) return [];
  return reading.places.flatMap(({ number, lab }) => {
    const place = plan.places.find((each) => each.number === number);
    if (place?.kind !== 'paint' || leftOut.includes(number)) return [];
    if (!inUse(place.parts, lots, stock)) return [null];
    const { sd, date } = reading;
    const seen = { id: placeId(id, number), parts: place.parts, lab, sd, date };
    return [{ ...seen, kind: 'photographed' as const, R: null }];
  });
}

function ofCurves({ id, body }: Entry<'curves'>, stock: Stock): (PaintedSwatch | null)[] {
  const { samples, lots, specular, date } = body;
  return samples.flatMap(({ name, parts, reflectance }) => {
    if (parts.length === 0) return [];
    if (!inUse(parts, lots, stock)) return [null];
    const R = spectrum<'R'>(reflectance);
    const painted: PaintedSwatch = {
      id: `${id}:${name}`,
      parts,
      kind: 'measured',
      lab: labOf(R),
      R,
      date,
    };
    const surface = storedSurface(stock);
    return [inSpecularMode(painted, specular ?? surface.specular, surface)];
  });
}

/**
 * A logged pile as evidence, with ids of the shelf's entries as pigments. Null when one of its lots
 * is no longer in use.
 */
export function loggedPile({ id, body }: Entry<'pile'>, stock: Stock): LoggedPile | null {
  const { mixture, lots, seen, known, date, reflectance } = body;
  const entries = mixture.parts.map(({ pigment }, i) => {
    // Two lots of one pigment share a name; then they are in the order of the parts.
    const used = [lots[i], ...lots].find((each) => each?.pigment === pigment);
    const entry = used?.entry
      ? stock.entries.find((each) => each.id === used.entry)
      : entryOf(pigment, stock);
    return entry && entry.lot === (used?.lot ?? entry.lot) ? entry : null;
  });
  if (entries.includes(null)) return null;
  return {
    id,
    parts: mixture.parts.map(({ parts }, i) => ({ pigment: entries[i]!.id, parts })),
    kind: known === 'measured' ? 'measured' : 'photographed',
    lab: seen,
    R: reflectance ? spectrum<'R'>(reflectance) : null,
    ...(reflectance
      ? {}
      : { sd: known === 'by eye' ? BY_EYE : known === 'measured' ? 0.5 : TOUCHED }),
    logged: true,
    date: date.slice(0, 10),
    foreseen: mixture.partsLab,
    lots: entries.map((entry) => ({ pigment: entry!.id, lot: entry!.lot })),
  };
}

/**
 * The shelf's entry for a pigment of a mixture: the lot that it names, otherwise the first one
 * without a curve of its own. Null when there is none.
 */
export function entryOf(pigment: string, stock: Stock): StockEntry | null {
  const [base, lot] = pigment.split('#');
  if (lot !== undefined) return stock.entries.find(({ id }) => id === lot) ?? null;
  const same = stock.entries.filter((each) => each.pigment === base && each.amount !== 0);
  return same.find(({ curve }) => curve === null) ?? same[0] ?? null;
}

/** The current lots of these entries. */
export const lotsOf = (ids: readonly string[], stock: Stock): readonly LotUsed[] =>
  stock.entries.filter(({ id }) => ids.includes(id)).map(({ id, lot }) => ({ pigment: id, lot }));

const inUse = (parts: readonly Part[], lots: readonly LotUsed[], stock: Stock): boolean =>
  parts.every(({ pigment }) => {
    const entry = stock.entries.find(({ id }) => id === pigment);
    const used = lots.find((each) => each.pigment === pigment);
    return entry !== undefined && entry.lot === (used?.lot ?? entry.lot);
  });
