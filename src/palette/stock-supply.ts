import { type Oil, pasteOf, weightsOf } from '../pigment/paste.ts';
import { pasteCm3 } from '../pigment/paste-volume.ts';
import { pigmentGrind, type WeighFault } from '../pigment/pigment-grind.ts';
import type { Stock, StockEntry } from '../pigment/stock.ts';
import { baseOf } from './passage.ts';
import { factsOf, handbookId, hazardOf, isToxic } from './pigment-lookup.ts';

/** Weight of a volume of one pigment's paste. Grams are not rounded. */
type Weighed =
  /** Ready paste or tube, no oil added; `grams` is null if its density is unknown. */
  | { readonly as: 'paste'; readonly grams: number | null; readonly about: boolean }
  | {
      readonly as: 'powder';
      readonly pigmentGrams: number;
      readonly oilGrams: number;
      readonly about: boolean;
    }
  | { readonly as: 'unweighed'; readonly why: WeighFault };

/** Paste drawn from one stock entry; `entry` is null if none has it. */
export interface Draw {
  readonly pigment: string;
  readonly entry: StockEntry | null;
  readonly cm3: number;
  readonly weighed: Weighed;
}

/** Paste of one pigment from one or more lots, and what the stock lacks. */
export interface Supply {
  readonly pigment: string;
  readonly cm3: number;
  readonly draws: readonly Draw[];
  /** Missing cm3; also 0 if an entry has no counted amount. */
  readonly lackCm3: number;
  /** Some of it comes from an entry without a counted amount. */
  readonly uncounted: boolean;
  /** The stock has only dry powder of a toxic pigment, which is never used. */
  readonly dryRefused: boolean;
}

/**
 * Weighs a volume of paste by the figures of the lot, of the studio's own pigment, or of the
 * handbooks.
 * @param oil the binder for powders
 */
export function weigh(
  stock: Stock | null,
  pigment: string,
  entry: StockEntry | null,
  cm3: number,
  oil: Oil = 'linseed',
): Weighed {
  const base = baseOf(pigment);
  const own = stock?.own.find(({ id }) => id === base);
  const density = entry?.density ?? own?.density ?? undefined;
  const takes = entry?.oil ?? own?.oil ?? undefined;
  const grind = pigmentGrind(handbookId(pigment), { density, oil: takes }, oil);
  const powder = entry?.form === 'powder';
  if (!grind.ok)
    return powder
      ? { as: 'unweighed', why: grind.fault }
      : { as: 'paste', grams: null, about: false };
  const facts = factsOf(pigment);
  const about =
    (density === undefined && facts?.density?.status === 'est') ||
    (takes === undefined && facts?.oil?.status === 'est');
  if (!powder) return { as: 'paste', grams: cm3 * pasteOf(grind.value).density, about };
  const { pigment: pigmentGrams, oil: oilGrams } = weightsOf(cm3, grind.value);
  return { as: 'powder', pigmentGrams, oilGrams, about };
}

/** A stock from which a day draws, pile by pile; the stock object itself is not changed. */
export class StockDrawer {
  private readonly stock: Stock | null;
  private readonly oil: Oil;
  /** cm3 of paste left in each entry; Infinity without a counted amount. */
  private readonly left = new Map<string, number>();

  constructor(stock: Stock | null, oil: Oil = 'linseed') {
    this.stock = stock;
    this.oil = oil;
    for (const entry of stock?.entries ?? [])
      this.left.set(entry.id, pasteCm3(stock!, entry) ?? Number.POSITIVE_INFINITY);
  }

  /** Draws paste in the shelf's order; toxic pigments never from powder. */
  draw(pigment: string, cm3: number): Supply {
    const [base, lot] = pigment.split('#');
    const all = (this.stock?.entries ?? []).filter(
      ({ pigment: of, id, amount }) => of === base && amount !== 0 && (lot ?? id) === id,
    );
    const toxic = isToxic(hazardOf(this.stock, pigment));
    const entries = all.filter(({ form }) => !(toxic && form === 'powder'));
    const draws: Draw[] = [];
    let want = cm3;
    let uncounted = false;
    for (const entry of entries) {
      const held = this.left.get(entry.id)!;
      const taken = Math.min(want, held);
      if (taken <= 0) continue;
      uncounted ||= held === Number.POSITIVE_INFINITY;
      this.left.set(entry.id, held - taken);
      draws.push(this.drawn(pigment, entry, taken));
      want -= taken;
      if (want <= 0) break;
    }
    const counted = this.stock !== null;
    if (want > 0) draws.push(this.drawn(pigment, null, want));
    return {
      pigment,
      cm3,
      draws,
      lackCm3: counted ? Math.max(0, want) : 0,
      uncounted: uncounted || !counted,
      dryRefused: toxic && all.length > entries.length && want > 0,
    };
  }

  private drawn(pigment: string, entry: StockEntry | null, cm3: number): Draw {
    return { pigment, entry, cm3, weighed: weigh(this.stock, pigment, entry, cm3, this.oil) };
  }
}

/** What one entry loses when a day is prepared, in that entry's own unit. */
export interface StockWithdrawal {
  readonly entry: string;
  readonly amount: number;
}

/**
 * What supplies take from the stock, one line per entry; uncounted and missing paint takes nothing.
 */
export function withdrawalsOf(supplies: readonly Supply[]): readonly StockWithdrawal[] {
  const takings = new Map<string, number>();
  for (const { entry, cm3, weighed } of supplies.flatMap(({ draws }) => draws)) {
    if (entry === null || entry.amount === null) continue;
    const grams = weighed.as === 'powder' ? weighed.pigmentGrams : gramsOf(weighed);
    const amount = entry.unit === 'ml' ? cm3 : grams;
    if (amount !== null) takings.set(entry.id, (takings.get(entry.id) ?? 0) + amount);
  }
  return [...takings].map(([entry, amount]) => ({ entry, amount }));
}
const gramsOf = (weighed: Weighed): number | null =>
  weighed.as === 'paste' ? weighed.grams : null;

/**
 * Takes amounts from a stock, and reports what was really taken: no entry falls below 0, and
 * entries that no longer exist are skipped. {@link putBack} undoes it, even after other changes.
 */
export function takeFrom(
  stock: Stock,
  takings: readonly StockWithdrawal[],
): { readonly stock: Stock; readonly taken: readonly StockWithdrawal[] } {
  const taken: StockWithdrawal[] = [];
  const entries = stock.entries.map((entry) => {
    const taking = takings.find((one) => one.entry === entry.id);
    if (taking === undefined || entry.amount === null) return entry;
    const amount = Math.min(taking.amount, entry.amount);
    taken.push({ entry: entry.id, amount });
    return { ...entry, amount: entry.amount - amount };
  });
  return { stock: { ...stock, entries }, taken };
}

/** Puts back what {@link takeFrom} took. */
export function putBack(stock: Stock, taken: readonly StockWithdrawal[]): Stock {
  const entries = stock.entries.map((entry) => {
    const taking = taken.find((one) => one.entry === entry.id);
    if (taking === undefined || entry.amount === null) return entry;
    return { ...entry, amount: entry.amount + taking.amount };
  });
  return { ...stock, entries };
}
