import { type Spectrum, spectrum } from '../colour/grid.ts';
import type { Paint } from '../optics/opaque.ts';
import { builtInPaintOf } from './built-in-curves.ts';
import type { Shelf, ShelfPaint, ShelfRemark } from './shelf.ts';
import type { Stock, StockEntry, StoredCurve } from './stock.ts';
import { labelOf, nameIn } from './stock-label.ts';

/**
 * The studio's curve for an entry: of its lot, else of its own pigment; null for the built-in one.
 */
export const studioCurveOf = (stock: Stock, entry: StockEntry): StoredCurve | null =>
  entry.curve ?? stock.own.find(({ id }) => id === entry.pigment)?.curve ?? null;

/** K and S of an entry: of its lot, else of its pigment; null if unknown. */
export function curveOfEntry(stock: Stock, entry: StockEntry): Paint | null {
  const kept = studioCurveOf(stock, entry);
  return kept === null ? builtInPaintOf(entry.pigment) : paintOfKept(kept);
}

const paintOfKept = ({ K, S }: StoredCurve): Paint => ({
  K: spectrum(K) as Spectrum<'K'>,
  S: spectrum(S) as Spectrum<'S'>,
});

/** The pigment id of a paint name; a lot with its own curve is named `pigment#entry`. */
export const pigmentOfPaint = (paint: string): string => paint.split('#')[0]!;

/**
 * The shelf for the mixture search. All uncalibrated entries of a pigment become one paint under
 * its id, because they share one curve. A lot with its own curve becomes a separate paint, under
 * the pigment's id if it is the only entry of the pigment, else under `pigment#entry`. Entries that
 * are used up or have no curve are left out, with a remark.
 */
export function mixtureShelfOf(stock: Stock): Shelf {
  const remarks: ShelfRemark[] = [];
  const taken = new Map<string, ShelfPaint>();
  const paintOf = new Map<string, string>();
  for (const entry of stock.entries) {
    const label = labelOf(stock, entry);
    if (entry.amount === 0) {
      remarks.push({ code: 'used-up', label });
      continue;
    }
    const paint = curveOfEntry(stock, entry);
    if (paint === null) {
      remarks.push({ code: 'no-curve', label });
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
    remarks.push({ code: stock.white === null ? 'white-not-marked' : 'white-not-mixable' });
  return {
    name: stock.name,
    basis: 'volume',
    surface: stock.surface,
    white,
    paints: [...taken.values()],
    remarks,
  };
}
