import { spectrum } from '../colour/grid.ts';
import { labOf } from '../colour/lab.ts';
import type { Surface } from '../optics/surface.ts';
import type { LoggedPile } from '../pigment/calibrate/pile.ts';
import { type Painted, type Part, seenAs } from '../pigment/calibrate/swatches.ts';
import type { Stock, StockEntry } from '../pigment/stock.ts';
import type { Entry } from './record.ts';
import type { LotUsed } from './swatches.ts';

/** A pile that was judged by eye alone is this far off in each of L*, a*, b*: an estimate. */
const BY_EYE = 4;
/** One pile beside a white and a grey in the same picture, with nothing to tell how the light falls. */
const TOUCHED = 1.5;

/**
 * How the book keeps what was seen: with the reflection of the gloss, whichever way the shelf is looked
 * at today. What was read before the painter changed that must not change with it.
 */
export const asKept = ({ surface }: Pick<Stock, 'surface'>): Surface => ({
  ...surface,
  specular: 'included',
});

/** Everything in the book that tells of the paints on the shelf as they are now. */
export interface Learnt {
  /** By ids of the shelf's entries. */
  readonly swatches: readonly Painted[];
  /** Left out, for one of their paints is off the shelf or is another lot now. */
  readonly ofOthers: number;
}

export interface Lessons {
  readonly cards: readonly Entry<'card'>[];
  readonly curves: readonly Entry<'curves'>[];
  readonly piles: readonly Entry<'pile'>[];
}

/** Swatches, measured samples and logged piles, as a fit takes them. */
export function learntFrom({ cards, curves, piles }: Lessons, stock: Stock): Learnt {
  const all = [
    ...cards.flatMap((card) => ofCard(card, stock)),
    ...curves.flatMap((file) => ofCurves(file, stock)),
    ...piles.map((pile) => loggedPile(pile, stock)),
  ];
  const swatches = all.filter((one) => one !== null);
  return { swatches, ofOthers: all.length - swatches.length };
}

/** Names the swatch of a card's place, so that it can be left out. */
export const placeId = (card: string, number: number): string => `${card}/${number}`;
/** The card and the place of a swatch's id; null where it is of another kind. */
export function placeOfId(id: string): { readonly card: string; readonly number: number } | null {
  const [card, number] = id.split('/');
  return number === undefined || !/^\d+$/.test(number) ? null : { card: card!, number: +number };
}

/**
 * Whether there is anything that the curves of a stock were not fitted to yet, or that they were fitted
 * to and is no more. Told by how many swatches and piles hold each paint; the white is in nearly all.
 */
export function hasNews({ swatches }: Learnt, stock: Stock): boolean {
  return stock.entries.some(({ id, curve }) => {
    if (id === stock.white) return false;
    const holding = swatches.filter(({ parts }) => parts.some(({ pigment }) => pigment === id));
    // A curve that came from elsewhere counts nothing.
    const known = curve?.trust ? curve.trust.swatches + curve.trust.piles : 0;
    return holding.length !== known;
  });
}

function ofCard({ id, body }: Entry<'card'>, stock: Stock): (Painted | null)[] {
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

function ofCurves({ id, body }: Entry<'curves'>, stock: Stock): (Painted | null)[] {
  const { samples, lots, specular, date } = body;
  return samples.flatMap(({ name, parts, reflectance }) => {
    if (parts.length === 0) return [];
    if (!inUse(parts, lots, stock)) return [null];
    const R = spectrum<'R'>(reflectance);
    const painted: Painted = {
      id: `${id}:${name}`,
      parts,
      kind: 'measured',
      lab: labOf(R),
      R,
      date,
    };
    const surface = asKept(stock);
    return [seenAs(painted, specular ?? surface.specular, surface)];
  });
}

/** A pile as it was logged, by ids of the shelf's entries; null where one of its lots is no longer in use. */
export function loggedPile({ id, body }: Entry<'pile'>, stock: Stock): LoggedPile | null {
  const { mixture, lots, seen, known, date, reflectance } = body;
  const entries = mixture.parts.map(({ pigment }, i) => {
    // Two lots of one pigment have one name: then they stand in the order of the parts.
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

/** The shelf's entry that a mixture's pigment is taken from: the lot it names, else the first that has no curve of its own. */
export function entryOf(pigment: string, stock: Stock): StockEntry | null {
  const [base, lot] = pigment.split('#');
  if (lot !== undefined) return stock.entries.find(({ id }) => id === lot) ?? null;
  const same = stock.entries.filter((each) => each.pigment === base && each.amount !== 0);
  return same.find(({ curve }) => curve === null) ?? same[0] ?? null;
}

/** The lots that these entries are of now. */
export const lotsOf = (ids: readonly string[], stock: Stock): readonly LotUsed[] =>
  stock.entries.filter(({ id }) => ids.includes(id)).map(({ id, lot }) => ({ pigment: id, lot }));

const inUse = (parts: readonly Part[], lots: readonly LotUsed[], stock: Stock): boolean =>
  parts.every(({ pigment }) => {
    const entry = stock.entries.find(({ id }) => id === pigment);
    const used = lots.find((each) => each.pigment === pigment);
    return entry !== undefined && entry.lot === (used?.lot ?? entry.lot);
  });
