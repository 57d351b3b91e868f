import { fail, ok, type Result } from '../result.ts';
import type { DayAsked } from './asked.ts';
import { daysBetween, isDay } from './calendar.ts';
import { MOST_PALETTES, type PaletteFault } from './faults.ts';
import { lacksOf } from './lack.ts';
import { layPalette, shareOffers } from './lay.ts';
import type { Studio } from './passage.ts';
import { planPile } from './pile.ts';
import type { Day, LeftOff, PilePlan } from './plan.ts';
import { amountOf } from './quantity.ts';
import { proposeSeats } from './seat.ts';
import { type Board, dealt, isTooMuch } from './spread.ts';
import { Cupboard, takingsOf } from './supply.ts';

/*
 * From a day's passages to its palettes. What screens and the command line call:
 *
 *   pileOfMixture, pilesOfFormula source.ts   piles from harmonies, draperies and formulas
 *   readDay(text)                form.ts      a day from a file: passages, layers, leftovers, rules
 *   planDay(asked, studio)       here         piles, amounts, seats, warnings, what waits, what lacks
 *                                           (more than a board carries, or a page says, becomes two)
 *   sheetOf(day, n, studio)      sheet.ts     the morning sheet of palette n, as data in plain words
 *   leftOffWords                 said.ts      why a pile is on no sheet
 *   sheetPage(sheet, board)      page.ts      its page of HTML; sheetDocument adds head and style
 *   drawPalette(laid, piles)     drawing.ts   the palette as SVG, from a layout of its seats
 *   takeFrom, putBack            supply.ts    "prepared" and its undo, with day.takings
 *   proposeSeats, moved          seat.ts      the studio's seat order, set once; moves by hand or key
 *   fewestOfDay(day, studio)     fewer.ts     what a shorter set of pigments costs, pile by pile
 *   layerOfPile                  source.ts    the coat that a passage keeps of a pile once it is laid
 *   putAway, offersOf            leftover.ts  what is left of a pile, and from days before
 *   paletteFaultWords            faults.ts    the sentences for everything that is refused
 *
 * What goes in is typed in asked.ts and passage.ts, what comes out in plan.ts and sheet.ts.
 * Dates are ISO days and come in as arguments; nothing here asks the clock or changes its input.
 */

/**
 * Plans a day: which piles can be worked, how much of what they take, where it lies, what to mind.
 * @returns every fault of the day at once, each with its sentence in {@link paletteFaultWords}
 */
export function planDay(asked: DayAsked, studio: Studio): Result<Day, readonly PaletteFault[]> {
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
  const boards = asked.palettes.map((palette, at) => dealt(at, palette, planned[at]!, 1));
  for (;;) {
    const day = dayOf(boards.flat(), leftOff, asked, studio);
    const full = day.palettes.flatMap((palette, at) =>
      isTooMuch(day, at, studio) ? [palette.asked] : [],
    );
    if (full.length === 0) return ok(day);
    for (const at of new Set(full))
      boards[at] = dealt(at, asked.palettes[at]!, planned[at]!, boards[at]!.length + 1);
  }
}

/** Lays the boards of a day, and draws what they take from one cupboard. */
function dayOf(
  boards: readonly Board[],
  leftOff: readonly LeftOff[],
  asked: DayAsked,
  studio: Studio,
): Day {
  const { date, rules } = asked;
  const cupboard = new Cupboard(studio.stock, rules.oil);
  const seats = rules.seats.length > 0 ? rules.seats : proposeSeats(studio.shelf);
  const palettes = shareOffers(
    boards.map((board) => layPalette(board, { asked, studio, cupboard, seats })),
  );
  const weighable = studio.shelf.basis === 'volume';
  const supplies = palettes.flatMap(({ pigments }) => pigments.map(({ supply }) => supply));
  return {
    date,
    rules,
    palettes,
    leftOff,
    lacks: weighable ? lacksOf(palettes, rules, studio) : [],
    takings: weighable ? takingsOf(supplies) : [],
    weighable,
  };
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
