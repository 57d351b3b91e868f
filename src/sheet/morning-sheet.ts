import {
  boardsWords,
  LEFTOVER_WORDS,
  lacksWords,
  passageStateWords,
  warningWords,
} from '../messages/palette-messages.ts';
import type { NumberFormat } from '../number-format.ts';
import { lotsToRead, readingOf } from '../palette/acknowledgements.ts';
import type { Day, PalettePlan } from '../palette/day-plan.ts';
import { dayWords, fullDay } from '../palette/iso-date.ts';
import type { Studio } from '../palette/passage.ts';
import { joinWords } from '../wording.ts';
import { ALWAYS, type CautionGroup, cautionsOf } from './cautions.ts';
import { cleaningOf } from './cleaning.ts';
import { type PrepareGroup, preparing } from './preparations.ts';
import { type SheetPile, sheetPile } from './sheet-pile.ts';

/** A morning sheet as plain text data. */
export interface MorningSheet {
  readonly title: string;
  readonly date: string;
  readonly day: string;
  readonly number: number;
  readonly of: number;
  readonly passages: string;
  readonly pupils: boolean;
  readonly useFirst: readonly string[];
  readonly prepare: readonly PrepareGroup[];
  /** Remarks under the list: oil, estimates, parts without grams. */
  readonly prepareNotes: readonly string[];
  readonly piles: readonly SheetPile[];
  /** State of the passages, and what waits and why. */
  readonly today: readonly string[];
  readonly mind: readonly string[];
  readonly lacks: readonly string[];
  readonly cautions: readonly CautionGroup[];
  readonly always: typeof ALWAYS;
  readonly cleaning: readonly string[];
  readonly acknowledge: readonly {
    readonly lot: string;
    readonly person: string;
    readonly date: string | null;
  }[];
}

/**
 * The morning sheet of one palette of a day.
 * @param index of the palette, from 0
 * @throws RangeError if there is no such palette
 */
export function sheetOf(
  day: Day,
  index: number,
  studio: Studio,
  number: NumberFormat,
): MorningSheet {
  const palette = day.palettes[index];
  if (palette === undefined) throw new RangeError(`the day has no palette ${index}`);
  return {
    title: palette.name,
    date: day.date,
    day: fullDay(day.date),
    number: index + 1,
    of: day.palettes.length,
    passages: joinWords(palette.passages.map(({ name }) => name)),
    pupils: day.rules.pupils,
    useFirst: palette.offers.map(({ leftover, state, piles }) => {
      const to = piles.length > 0 ? ` for ${joinWords(piles.map((name) => `“${name}”`))}` : '';
      const heap = `“${leftover.name}”, ${number(leftover.cm3, 0, 2)} cm³, ${leftover.kept} since ${dayWords(leftover.date)}`;
      return `${heap}: ${LEFTOVER_WORDS[state]}${to}.`;
    }),
    ...preparing(day, palette, studio, number),
    piles: [...palette.mixed, ...palette.piles.filter((one) => one.pure)].map((plan) =>
      sheetPile(plan, day, palette, studio, number),
    ),
    today: [...boardsWords(day, palette.asked), ...passageStateWords(day, palette)],
    mind: warningWords(palette, studio, number),
    lacks: lacksWords(day, index, studio, number),
    cautions: cautionsOf(palette.pigments, studio.stock),
    always: ALWAYS,
    cleaning: cleaningOf(palette.pigments),
    acknowledge: acknowledgements(day, palette, studio),
  };
}

const acknowledgements = (
  { rules }: Day,
  { pigments }: PalettePlan,
  { stock }: Studio,
): MorningSheet['acknowledge'] =>
  lotsToRead(pigments, stock).flatMap((lot) =>
    rules.people.map((person) => ({
      lot: lot.words,
      person,
      date: readingOf(rules, lot, person)?.date ?? null,
    })),
  );
