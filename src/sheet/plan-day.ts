import { allocatePalette, assignLeftovers, type Board } from '../palette/allocate.ts';
import type { Day, LeftOff, PilePlan } from '../palette/day-plan.ts';
import type { DayRequest } from '../palette/day-request.ts';
import { daysBetween, isDay } from '../palette/iso-date.ts';
import { MOST_PALETTES, type PaletteFault } from '../palette/palette-faults.ts';
import type { Studio } from '../palette/passage.ts';
import { amountOf } from '../palette/pile-quantity.ts';
import { planPile } from '../palette/plan-pile.ts';
import { proposeSeats } from '../palette/seat-order.ts';
import { shortagesOf } from '../palette/shortages.ts';
import { StockDrawer, withdrawalsOf } from '../palette/stock-supply.ts';
import { fail, ok, type Result } from '../result.ts';
import { divideOverBoards, exceedsBoard } from './boards.ts';

/*
 * From a day's passages to its palettes. What comes before and after:
 *
 *   palette/piles-from-recipes.ts piles from harmonies, draperies and formulas
 *   palette/day-file.ts          reads a day file
 *   planDay, here                piles, amounts, seats, warnings, what waits and what is missing;
 *                                divides what exceeds a board or a page (boards.ts)
 *   palette/seat-order.ts        the studio's seat order, and manual moves
 *   palette/fewest-of-day.ts     the cost of fewer pigments
 *   drawing/palette-markup.ts    the palette as a drawing
 *   morning-sheet.ts             the sheet of one palette as plain data
 *   page-html.ts                 that sheet as a page of HTML
 *   palette/stock-supply.ts      what is taken from the stock, and put back by undo
 *   palette/leftovers.ts         what is left, and offers of earlier days
 *   messages/palette-faults.ts   sentences for every fault
 *
 * Input types: palette/day-request.ts, palette/passage.ts. Output: palette/day-plan.ts. Dates are
 * ISO dates and passed as arguments; nothing here reads the clock or changes its input.
 */

/**
 * Plans a day: which piles can be painted, amounts and supplies, seats, warnings.
 * @returns the day, or every fault at once; {@link paletteFaultWords} words them
 */
export function planDay(asked: DayRequest, studio: Studio): Result<Day, readonly PaletteFault[]> {
  const faults = faultsOf(asked);
  if (faults.length > 0) return fail(faults);
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
  const boards = asked.palettes.map((palette, at) =>
    divideOverBoards(at, palette, planned[at]!, 1),
  );
  for (;;) {
    const day = dayOf(boards.flat(), leftOff, asked, studio);
    const full = day.palettes.flatMap((palette, at) =>
      exceedsBoard(day, at, studio) ? [palette.asked] : [],
    );
    if (full.length === 0) return ok(day);
    for (const at of new Set(full))
      boards[at] = divideOverBoards(at, asked.palettes[at]!, planned[at]!, boards[at]!.length + 1);
  }
}

/** Fills the boards of a day, drawing all of them from one stock. */
function dayOf(
  boards: readonly Board[],
  leftOff: readonly LeftOff[],
  asked: DayRequest,
  studio: Studio,
): Day {
  const { date, rules } = asked;
  const cupboard = new StockDrawer(studio.stock, rules.oil);
  const seats = rules.seats.length > 0 ? rules.seats : proposeSeats(studio.shelf);
  const palettes = assignLeftovers(
    boards.map((board) => allocatePalette(board, { asked, studio, cupboard, seats })),
  );
  const weighable = studio.shelf.basis === 'volume';
  const supplies = palettes.flatMap(({ pigments }) => pigments.map(({ supply }) => supply));
  return {
    date,
    rules,
    palettes,
    leftOff,
    lacks: weighable ? shortagesOf(palettes, rules, studio) : [],
    takings: weighable ? withdrawalsOf(supplies) : [],
    weighable,
  };
}

/** Everything that is wrong with a request. */
function faultsOf({ date, palettes, rules }: DayRequest): PaletteFault[] {
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
