import type { Lab } from '../colour/lab.ts';
import { wholeShelf } from '../pigment/starter-shelf.ts';
import type { PalettePlan, PilePlan } from './day-plan.ts';
import type { DayRequest, PaletteRequest } from './day-request.ts';
import { offersOf } from './leftovers.ts';
import { baseOf, labelIn, type Studio } from './passage.ts';
import { clashes } from './pigment-clashes.ts';
import { hazardOf, isToxic } from './pigment-lookup.ts';
import { pileColour, UNKNOWN, whiteOf } from './plan-pile.ts';
import { inManualOrder, mixedOrder, placesOf, seatOrder } from './seat-order.ts';
import type { StockDrawer } from './stock-supply.ts';
import { TOOLS, TOOLS_WORDS, toolsOf } from './tool-groups.ts';

/** One board: a requested palette, or a part of it. */
export interface Board {
  /** Index of the requested palette. */
  readonly asked: number;
  readonly palette: PaletteRequest;
  readonly piles: readonly PilePlan[];
  /** Board `part` of `of`; 1 of 1 unless the palette was divided. */
  readonly part: number;
  readonly of: number;
}

const HANDBOOK = wholeShelf();
/** Masstone of a pigment; one that is not on the shelf takes the handbook's. */
const masstoneOf = (pigment: string, studio: Studio): Lab =>
  pileColour({ parts: [{ pigment, parts: 1 }] }, studio) ??
  pileColour({ parts: [{ pigment: baseOf(pigment), parts: 1 }] }, { ...studio, shelf: HANDBOOK }) ??
  UNKNOWN;

/** Input for one palette; all palettes of a day share the cupboard. */
interface AllocationInput {
  readonly asked: DayRequest;
  readonly studio: Studio;
  readonly cupboard: StockDrawer;
  readonly seats: readonly string[];
}

/** Allocates pigments and piles to a palette: amounts, seats, order of preparation, warnings. */
export function allocatePalette(
  { palette, piles, asked: at, part, of }: Board,
  { asked: { rules, leftovers, date }, studio, cupboard, seats }: AllocationInput,
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
      lab: masstoneOf(key, studio),
      tools: toolsOf(key, hazardOf(studio.stock, key)),
      inMixtures: mixed,
      inSeat: seat,
      supply: cupboard.draw(key, mixed + seat),
    };
  });
  const white = whiteOf(studio, rules);
  const own = palette.seats ?? seats;
  const seating = seatOrder(pigments, own, white);
  const places = placesOf(
    seating.map(({ key }) => key),
    own,
    white,
  );
  const inOrder = seating.map((one, i) => ({ ...one, place: places[i]! }));
  const lightToDark = seatOrder(inOrder, [], null);
  const preparing = TOOLS.flatMap((tools) => lightToDark.filter((one) => one.tools === tools));
  const mixed = mixedOrder(piles.filter(({ pure }) => !pure));
  const safe = leftovers.filter(
    ({ parts }) =>
      !rules.pupils || parts.every(({ pigment }) => !isToxic(hazardOf(studio.stock, pigment))),
  );
  const wanted = piles.map(({ pile, lab }) => ({
    name: pile.name,
    parts: pile.parts,
    letDowns: pile.letDowns,
    lab,
  }));
  return {
    asked: at,
    part,
    of,
    name: palette.name,
    passages: palette.passages,
    pigments: inOrder,
    piles,
    mixed: palette.order ? inManualOrder(mixed, palette.order) : mixed,
    preparing,
    slabClashes: TOOLS.flatMap((tools) =>
      clashes(
        'slab',
        TOOLS_WORDS[tools],
        preparing.filter((one) => one.tools === tools).map(({ key }) => key),
        null,
      ),
    ),
    offers: offersOf(safe, wanted, date),
  };
}

/**
 * Assigns leftovers to the sheets of the palettes that they serve; those that serve none, or must
 * be discarded, go on the first.
 */
export function assignLeftovers(palettes: readonly PalettePlan[]): readonly PalettePlan[] {
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
