import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { predict } from '../mixture/predict.ts';
import type { Oil } from '../pigment/paste.ts';
import { masstone } from '../pigment/white.ts';
import { fail, ok, type Result } from '../result.ts';
import { daysBetween, isDay } from './calendar.ts';
import { type Clash, clashes } from './clash.ts';
import { type Dryness, drynessOf, isDry } from './drying.ts';
import { MOST_PALETTES, type PaletteFault } from './faults.ts';
import { needsDryGround } from './film.ts';
import { hazardOf, isToxic } from './known.ts';
import { type LayerWarning, layerWarnings } from './layer.ts';
import { type Leftover, type Offer, offersOf } from './leftover.ts';
import { labelIn, type Passage, type PassagePile, type Studio, sharesOf } from './passage.ts';
import { ALLOWANCES, type Allowances, amountOf, type PileAmount, spareOilOf } from './quantity.ts';
import { asSet, mixedOrder, proposeSeats, seated } from './seat.ts';
import { Cupboard, type Supply, type Taking, takingsOf } from './supply.ts';
import { nearestOther, type Swap, toxicOf } from './swap.ts';
import { TOOLS, TOOLS_WORDS, type Tools, toolsOf } from './tools.ts';

/*
 * From a day's passages to its palettes. What screens and the command line call:
 *
 *   pileOfMixture, pilesOfFormula source.ts   piles from harmonies, draperies and formulas
 *   readDay(text)                form.ts      a day from a file: passages, layers, leftovers, rules
 *   planDay(asked, studio)       here         piles, amounts, seats, warnings, what waits, what lacks
 *   sheetOf(day, n, studio)      sheet.ts     the morning sheet of palette n, as data in plain words
 *   sheetPage(sheet, board)      page.ts      its page of HTML; sheetDocument adds head and style
 *   drawPalette(laid, piles)     drawing.ts   the palette as SVG, from a layout of its seats
 *   takeFrom, putBack            supply.ts    "prepared" and its undo, with day.takings
 *   proposeSeats, moved          seat.ts      the studio's seat order, set once; moves by hand or key
 *   fewestOfDay(day, studio)     fewer.ts     what a shorter set of pigments costs, pile by pile
 *   offersOf, leftoverState      leftover.ts  what is left from days before
 *   paletteFaultWords            faults.ts    the sentences for everything that is refused
 *
 * Dates are ISO days and come in as arguments; nothing here asks the clock or changes its input.
 */

/** Who has read the data sheet of which lot, and when. */
export interface Acknowledged {
  readonly pigment: string;
  readonly lot: string;
  readonly person: string;
  readonly date: string;
}

/** What a studio has settled once. */
export interface Rules {
  /** Seat order by pigment; empty: light to dark is proposed. */
  readonly seats: readonly string[];
  readonly shape: 'oval' | 'square';
  /** The hand that holds the palette. */
  readonly hand: 'left' | 'right';
  readonly allowances: Allowances;
  /** cm3 of each pigment laid out pure beside its mixtures, for corrections; 0 for none. */
  readonly edgeCm3: number;
  readonly oil: Oil;
  /** Pupils under age or pregnant people are here: nothing toxic comes on any sheet. */
  readonly pupils: boolean;
  /** Who works here today; each acknowledges each toxic lot. */
  readonly people: readonly string[];
  readonly acknowledged: readonly Acknowledged[];
}
export const RULES: Rules = {
  seats: [],
  shape: 'oval',
  hand: 'left',
  allowances: ALLOWANCES,
  edgeCm3: 0.5,
  oil: 'linseed',
  pupils: false,
  people: [],
  acknowledged: [],
};

/** One to three palettes, each for one passage or more. */
export interface DayAsked {
  /** ISO day. */
  readonly date: string;
  readonly palettes: readonly PaletteAsked[];
  readonly rules: Rules;
  readonly leftovers: readonly Leftover[];
}
export interface PaletteAsked {
  readonly name: string;
  readonly passages: readonly Passage[];
  /** Ids of mixed piles in an order set by hand; the studio's own order where absent. */
  readonly order?: readonly string[];
}

/** A pile that is prepared today. */
export interface PilePlan {
  readonly key: string;
  readonly passage: Passage;
  /** As it will be mixed. */
  readonly pile: PassagePile & { readonly parts: NonNullable<PassagePile['parts']> };
  readonly lab: Lab;
  readonly amount: PileAmount;
  /** One pigment as it comes: it lies in its seat, not among the mixed piles. */
  readonly pure: boolean;
  /** At least half of it is the studio's white. */
  readonly tint: boolean;
  /** The mixture that stands in for one with toxic pigments. */
  readonly swap: Swap | null;
  readonly clashes: readonly Clash[];
  readonly layerWarnings: readonly LayerWarning[];
}

/** A pigment on one palette. All volumes are of paste. */
export interface PigmentPlan {
  readonly key: string;
  readonly label: string;
  readonly lab: Lab;
  readonly tools: Tools;
  /** cm3 that go into mixed piles, and that lie in the pigment's own seat; they sum to the supply. */
  readonly inMixtures: number;
  readonly inSeat: number;
  readonly supply: Supply;
}

export interface PalettePlan {
  readonly name: string;
  readonly passages: readonly Passage[];
  /** In their seats. */
  readonly pigments: readonly PigmentPlan[];
  /** Every pile, pure ones too, in the order they were asked for. */
  readonly piles: readonly PilePlan[];
  /** In their rows. */
  readonly mixed: readonly PilePlan[];
  /** In the order in which they are prepared: by tools, light to dark within. */
  readonly preparing: readonly PigmentPlan[];
  readonly slabClashes: readonly Clash[];
  readonly offers: readonly Offer[];
}

/** A pile that is left off today, and why. */
export interface LeftOff {
  readonly pile: string;
  readonly passage: string;
  readonly why:
    | { readonly code: 'mixture-gone' }
    | { readonly code: 'toxic-alone' }
    | { readonly code: 'ground-wet'; readonly dryness: Dryness };
}

/** A pigment of which the shelf holds less than the day asks for. */
export interface Lack {
  readonly pigment: string;
  readonly label: string;
  readonly lackCm3: number;
  readonly dryRefused: boolean;
  readonly piles: readonly {
    readonly pile: string;
    readonly palette: number;
    readonly other: Swap | null;
  }[];
}

export interface Day {
  readonly date: string;
  readonly rules: Rules;
  readonly palettes: readonly PalettePlan[];
  readonly leftOff: readonly LeftOff[];
  readonly lacks: readonly Lack[];
  /** What leaves the stock once this is prepared. */
  readonly takings: readonly Taking[];
  /** Whether a part is a volume of paste; where it is not, there are parts, but no grams. */
  readonly weighable: boolean;
}

/** A pile whose colour nobody knows is drawn in middle grey. */
const UNKNOWN: Lab = [50, 0, 0];

/**
 * Plans a day: which piles can be worked, how much of what they take, where it lies, what to mind.
 * @returns every fault of the day at once, each with its sentence in {@link paletteFaultWords}
 */
export function planDay(asked: DayAsked, studio: Studio): Result<Day, readonly PaletteFault[]> {
  const faults = faultsOf(asked);
  if (faults.length > 0) return fail(faults);
  const { date, rules } = asked;
  const leftOff: LeftOff[] = [];
  const planned = asked.palettes.map(({ passages }) =>
    passages.flatMap((passage) =>
      passage.piles.flatMap((pile): PilePlan[] => {
        const plan = planPile(pile, passage, asked, studio);
        if (!('why' in plan)) return [plan];
        leftOff.push({ pile: pile.name, passage: passage.name, why: plan.why });
        return [];
      }),
    ),
  );
  const cupboard = new Cupboard(studio.stock, rules.oil);
  const seats = rules.seats.length > 0 ? rules.seats : proposeSeats(studio.shelf);
  const palettes = shareOffers(
    asked.palettes.map((palette, at) =>
      layPalette(palette, planned[at]!, { asked, studio, cupboard, seats }),
    ),
  );
  const weighable = studio.shelf.basis === 'volume';
  const supplies = palettes.flatMap(({ pigments }) => pigments.map(({ supply }) => supply));
  return ok({
    date,
    rules,
    palettes,
    leftOff,
    lacks: weighable ? lacksOf(palettes, rules, studio) : [],
    takings: weighable ? takingsOf(supplies) : [],
    weighable,
  });
}

function faultsOf({ date, palettes, rules }: DayAsked): PaletteFault[] {
  const faults: PaletteFault[] = [];
  if (!isDay(date)) faults.push({ code: 'day-date', date });
  if (palettes.every(({ passages }) => passages.every(({ piles }) => piles.length === 0)))
    faults.push({ code: 'day-empty' });
  if (palettes.length > MOST_PALETTES)
    faults.push({ code: 'palettes-many', count: palettes.length });
  for (const { passages } of palettes) {
    const names = new Set<string>();
    for (const passage of passages) {
      for (const { date: laid } of passage.layers)
        if (!isDay(laid) || (isDay(date) && daysBetween(laid, date) < 0))
          faults.push({ code: 'layer-date', passage: passage.name, date: laid });
      for (const pile of passage.piles) {
        if (names.has(pile.name)) faults.push({ code: 'pile-twice', pile: pile.name });
        names.add(pile.name);
        const amount = amountOf(pile, passage, rules.allowances);
        if (!amount.ok) faults.push(...amount.fault);
      }
    }
  }
  return faults;
}

function planPile(
  asked: PassagePile,
  passage: Passage,
  { date, rules }: DayAsked,
  studio: Studio,
): PilePlan | { readonly why: LeftOff['why'] } {
  if (asked.parts === null) return { why: { code: 'mixture-gone' } };
  const last = passage.layers.at(-1);
  if (last !== undefined && needsDryGround(asked.film)) {
    const dryness = drynessOf(last, date);
    if (!isDry(dryness)) return { why: { code: 'ground-wet', dryness } };
  }
  const wanted = colourOf({ ...asked, parts: asked.parts }, studio);
  const names = sharesOf(asked.parts, asked.letDowns).map(({ pigment }) => pigment);
  let pile = { ...asked, parts: asked.parts };
  let swap: Swap | null = null;
  if (rules.pupils && names.some((name) => isToxic(hazardOf(studio.stock, name)))) {
    const toxic = toxicOf(studio);
    swap = wanted === null ? null : nearestOther(wanted, toxic, [], studio);
    if (swap === null) return { why: { code: 'toxic-alone' } };
    pile = { ...pile, parts: swap.parts, letDowns: swap.letDowns };
  }
  const lab = swap?.lab ?? wanted ?? UNKNOWN;
  const amount = amountOf(pile, passage, rules.allowances);
  if (!amount.ok) throw new RangeError(`${pile.name} was not checked`);
  const shares = sharesOf(pile.parts, pile.letDowns);
  const white = whiteOf(studio, rules);
  const mixed = shares.map(({ pigment }) => pigment);
  // Under the pupils switch what lies below is not named: its pigments may be toxic ones.
  const below = last === undefined ? [] : sharesOf(last.parts).map(({ pigment }) => pigment);
  return {
    key: asked.id,
    passage,
    pile,
    lab,
    amount: amount.value,
    pure: shares.length === 1 && spareOilOf(pile) === 0,
    tint: shares.some(({ pigment, share }) => pigment === white && share >= 0.5),
    swap,
    clashes: [
      ...clashes('pile', pile.name, mixed, null, studio),
      ...(rules.pupils ? [] : clashes('layers', pile.name, mixed, below, studio)),
    ],
    layerWarnings: last === undefined ? [] : layerWarnings(pile, last, studio),
  };
}

/** The colour of a pile: as it was planned, else as the shelf predicts it; null where neither is known. */
function colourOf(
  { lab, parts, letDowns }: Pick<PilePlan['pile'], 'lab' | 'parts' | 'letDowns'>,
  { shelf }: Studio,
): Lab | null {
  if (lab !== undefined) return lab;
  const shares = sharesOf(parts, letDowns);
  const known = shares.every(({ pigment }) => shelf.paints.some((one) => one.pigment === pigment));
  if (!known) return null;
  return predict(
    shares.map(({ pigment, share }) => ({ pigment, amount: share })),
    shelf,
  );
}

/** The studio's white; with pupils about, the lightest white that is not toxic. */
function whiteOf(studio: Studio, { pupils }: Rules): string | null {
  const { shelf, stock } = studio;
  const { white } = shelf;
  if (white === null || !pupils || !isToxic(hazardOf(stock, white))) return white;
  const wanted = colourOf({ parts: [{ pigment: white, parts: 1 }] }, studio);
  const safe = shelf.paints
    .filter(({ pigment }) => !isToxic(hazardOf(stock, pigment)))
    .map(({ pigment, paint }) => ({ pigment, lab: masstone(paint, shelf.surface) }))
    .filter(({ lab }) => lab[0] >= 85);
  safe.sort((a, b) => deltaE00(wanted!, a.lab) - deltaE00(wanted!, b.lab));
  return safe[0]?.pigment ?? null;
}

interface Laying {
  readonly asked: DayAsked;
  readonly studio: Studio;
  readonly cupboard: Cupboard;
  readonly seats: readonly string[];
}

function layPalette(
  palette: PaletteAsked,
  piles: readonly PilePlan[],
  { asked: { rules, leftovers, date }, studio, cupboard, seats }: Laying,
): PalettePlan {
  const inMixtures = new Map<string, number>();
  const inSeat = new Map<string, number>();
  for (const { amount, pure } of piles)
    for (const { pigment, cm3 } of amount.pigments) {
      const heap = pure ? inSeat : inMixtures;
      heap.set(pigment, (heap.get(pigment) ?? 0) + cm3);
    }
  for (const pigment of inMixtures.keys())
    if (!inSeat.has(pigment)) inSeat.set(pigment, rules.edgeCm3);
  const pigments = [...new Set([...inMixtures.keys(), ...inSeat.keys()])].map((key) => {
    const [mixed, seat] = [inMixtures.get(key) ?? 0, inSeat.get(key) ?? 0];
    return {
      key,
      label: labelIn(studio, key),
      lab: colourOf({ parts: [{ pigment: key, parts: 1 }] }, studio) ?? UNKNOWN,
      tools: toolsOf(key, hazardOf(studio.stock, key)),
      inMixtures: mixed,
      inSeat: seat,
      supply: cupboard.draw(key, mixed + seat),
    };
  });
  const inOrder = seated(pigments, seats, whiteOf(studio, rules));
  const lightToDark = seated(pigments, [], null);
  const preparing = TOOLS.flatMap((tools) => lightToDark.filter((one) => one.tools === tools));
  const mixed = mixedOrder(piles.filter(({ pure }) => !pure));
  const safe = leftovers.filter(
    ({ parts }) =>
      !rules.pupils || parts.every(({ pigment }) => !isToxic(hazardOf(studio.stock, pigment))),
  );
  const wanted = piles.map(({ pile, lab }) => ({ name: pile.name, parts: pile.parts, lab }));
  return {
    name: palette.name,
    passages: palette.passages,
    pigments: inOrder,
    piles,
    mixed: palette.order ? asSet(mixed, palette.order) : mixed,
    preparing,
    slabClashes: TOOLS.flatMap((tools) =>
      clashes(
        'slab',
        TOOLS_WORDS[tools],
        preparing.filter((one) => one.tools === tools).map(({ key }) => key),
        null,
        studio,
      ),
    ),
    offers: offersOf(safe, wanted, date),
  };
}

/**
 * Leftovers belong on the sheet of the palette that they serve; what serves none, or must go, stands
 * on the first.
 */
function shareOffers(palettes: readonly PalettePlan[]): readonly PalettePlan[] {
  const served = new Set(
    palettes.flatMap(({ offers }) =>
      offers.filter(({ piles }) => piles.length > 0).map(({ leftover }) => leftover.id),
    ),
  );
  return palettes.map((palette, at) => ({
    ...palette,
    offers: palette.offers.filter(
      ({ piles, leftover }) => piles.length > 0 || (at === 0 && !served.has(leftover.id)),
    ),
  }));
}

function lacksOf(palettes: readonly PalettePlan[], rules: Rules, studio: Studio): readonly Lack[] {
  const lacks = new Map<string, { lackCm3: number; dryRefused: boolean }>();
  for (const { supply, key } of palettes.flatMap(({ pigments }) => pigments)) {
    if (supply.lackCm3 <= 0) continue;
    const before = lacks.get(key);
    lacks.set(key, {
      lackCm3: (before?.lackCm3 ?? 0) + supply.lackCm3,
      dryRefused: supply.dryRefused || (before?.dryRefused ?? false),
    });
  }
  return [...lacks].map(([pigment, lack]) => ({
    pigment,
    label: labelIn(studio, pigment),
    ...lack,
    piles: palettes.flatMap(({ piles }, palette) =>
      piles
        .filter(({ amount }) => amount.pigments.some((one) => one.pigment === pigment))
        .map(({ pile, lab, amount }) => {
          const before = rules.pupils ? [] : amount.pigments.map((one) => one.pigment);
          // What else lacks is no help either.
          const other = nearestOther(lab, [...lacks.keys()], before, studio);
          return { pile: pile.name, palette, other };
        }),
    ),
  }));
}
