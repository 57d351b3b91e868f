import { type Spectrum, spectrum } from '../colour/grid.ts';
import type { Paint } from '../optics/opaque.ts';
import { ownCurve } from './curves.ts';
import { labelOf, nameIn } from './label.ts';
import type { Shelf, ShelfPaint } from './shelf.ts';
import type { KeptCurve, Stock, StockEntry } from './stock.ts';

/** The studio's own curve of an entry: of its lot, else of a pigment of the studio's own; null for the handbook's. */
export const keptCurveOf = (stock: Stock, entry: StockEntry): KeptCurve | null =>
  entry.curve ?? stock.own.find(({ id }) => id === entry.pigment)?.curve ?? null;

/** K and S of an entry: of its own lot, else of its pigment; null while nobody knows them. */
export function curveOfEntry(stock: Stock, entry: StockEntry): Paint | null {
  const kept = keptCurveOf(stock, entry);
  return kept === null ? ownCurve(entry.pigment) : paintOfKept(kept);
}

const paintOfKept = ({ K, S }: KeptCurve): Paint => ({
  K: spectrum(K) as Spectrum<'K'>,
  S: spectrum(S) as Spectrum<'S'>,
});

/** The pigment of a paint: a lot with a curve of its own is named after its pigment, `pigment#entry`. */
export const baseOf = (paint: string): string => paint.split('#')[0]!;

/**
 * The shelf that mixtures are sought on. A pigment's uncalibrated entries are one paint under its id,
 * for they would look alike; a lot with a curve of its own is a paint of its own, under the pigment's
 * id while it is the only one, else under `pigment#entry`. What is used up, or has no curve yet, is
 * left out and a remark says so.
 */
export function shelfOfStock(stock: Stock): Shelf {
  const remarks: string[] = [];
  const taken = new Map<string, ShelfPaint>();
  const paintOf = new Map<string, string>();
  for (const entry of stock.entries) {
    const label = labelOf(stock, entry);
    if (entry.amount === 0) {
      remarks.push(`${label} is used up.`);
      continue;
    }
    const paint = curveOfEntry(stock, entry);
    if (paint === null) {
      remarks.push(`${label} has no K and S yet, so nothing is mixed with it.`);
      continue;
    }
    const alone = !stock.entries.some(
      (other) => other.id !== entry.id && other.pigment === entry.pigment && other.amount !== 0,
    );
    const own = entry.curve !== null && !alone;
    const pigment = own ? `${entry.pigment}#${entry.id}` : entry.pigment;
    const name = own ? label : nameIn(stock, entry.pigment);
    if (!taken.has(pigment)) taken.set(pigment, { pigment, label: name, paint });
    paintOf.set(entry.id, pigment);
  }
  const white = (stock.white === null ? null : paintOf.get(stock.white)) ?? null;
  if (white === null)
    remarks.push(
      stock.white === null
        ? 'No white is marked: colours lighter than the other paints may be out of reach.'
        : "The studio's white cannot be mixed with: mark another.",
    );
  return {
    name: stock.name,
    basis: 'volume',
    surface: stock.surface,
    white,
    paints: [...taken.values()],
    remarks,
  };
}
