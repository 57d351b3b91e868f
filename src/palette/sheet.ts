import { dayWords, fullDay } from './calendar.ts';
import { ALWAYS, type CautionGroup, cautionsOf } from './caution.ts';
import { cleaningOf } from './clean.ts';
import { listed } from './figure.ts';
import { type SheetPile, sheetPile } from './heap.ts';
import { hazardOf, isToxic } from './known.ts';
import { LEFTOVER_WORDS } from './leftover.ts';
import type { Studio } from './passage.ts';
import type { Day, PalettePlan } from './plan.ts';
import { type PrepareGroup, preparing } from './prepare.ts';
import { lackWords, mindOf, todayOf } from './said.ts';
export interface MorningSheet {
  readonly title: string;
  readonly date: string;
  readonly day: string;
  readonly number: number;
  readonly of: number;
  /** For which passages, where the title does not say it. */
  readonly for: string;
  readonly pupils: boolean;
  readonly useFirst: readonly string[];
  readonly prepare: readonly PrepareGroup[];
  /** Remarks under the list: oil, estimates, parts without grams. */
  readonly prepareNotes: readonly string[];
  readonly piles: readonly SheetPile[];
  /** How the passages stand, what waits and why. */
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
 * @param index which palette, from 0
 */
export function sheetOf(day: Day, index: number, studio: Studio): MorningSheet {
  const palette = day.palettes[index];
  if (palette === undefined) throw new RangeError(`the day has no palette ${index}`);
  return {
    title: palette.name,
    date: day.date,
    day: fullDay(day.date),
    number: index + 1,
    of: day.palettes.length,
    for: forWords(palette),
    pupils: day.rules.pupils,
    useFirst: palette.offers.map(({ leftover, state, piles }) => {
      const to = piles.length > 0 ? ` for ${listed(piles.map((name) => `“${name}”`))}` : '';
      const heap = `“${leftover.name}”, ${leftover.cm3} cm³, ${leftover.kept} since ${dayWords(leftover.date)}`;
      return `${heap}: ${LEFTOVER_WORDS[state]}${to}.`;
    }),
    ...preparing(day, palette, studio),
    piles: [...palette.mixed, ...palette.piles.filter((one) => one.pure)].map((plan) =>
      sheetPile(plan, day, palette, studio),
    ),
    today: todayOf(day, palette),
    mind: mindOf(palette, studio),
    lacks: day.lacks
      .filter(({ piles }) => piles.some((one) => one.palette === index))
      .map((lack) => lackWords(lack, index, studio)),
    cautions: cautionsOf(palette.pigments, studio.stock),
    always: ALWAYS,
    cleaning: cleaningOf(palette.pigments),
    acknowledge: acknowledgements(day, palette, studio),
  };
}

function forWords({ name, passages }: PalettePlan): string {
  const words = listed(passages.map((passage) => passage.name));
  return words === name ? '' : `for ${words}`;
}

function acknowledgements(
  { rules }: Day,
  { pigments }: PalettePlan,
  { stock }: Studio,
): MorningSheet['acknowledge'] {
  return pigments
    .filter(({ key }) => isToxic(hazardOf(stock, key)))
    .flatMap(({ key, label, supply }) =>
      [...new Set(supply.draws.map(({ entry }) => entry?.lot ?? ''))].flatMap((lot) =>
        rules.people.map((person) => ({
          lot: lot === '' ? label : `${label}, lot ${lot.replace(/^lot\s*/i, '')}`,
          person,
          date:
            rules.acknowledged.find(
              (one) => one.pigment === key && one.lot === lot && one.person === person,
            )?.date ?? null,
        })),
      ),
    );
}
