import { paletteFaultWords } from '../../src/messages/palette-faults.ts';
import type { PilePart } from '../../src/mixture/pile-parts.ts';
import { plainNumber } from '../../src/number-format.ts';
import type { Day } from '../../src/palette/day-plan.ts';
import { type DayRequest, DEFAULT_RULES } from '../../src/palette/day-request.ts';
import { FILM_WORDS } from '../../src/palette/film-kinds.ts';
import type { Passage, PassagePile, Studio } from '../../src/palette/passage.ts';
import {
  ownPaint,
  STARTER_SURFACE,
  starterShelf,
  wholeShelf,
} from '../../src/pigment/starter-shelf.ts';
import { draftOf, type Stock, type StockEntry } from '../../src/pigment/stock.ts';
import { planDay } from '../../src/sheet/plan-day.ts';

/** The same numbers for the same seed (a linear congruence: enough to vary a test). */
export function dice(seed: number) {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  return {
    next,
    whole: (least: number, most: number) => least + Math.floor(next() * (most - least + 1)),
    one: <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!,
  };
}
export type Dice = ReturnType<typeof dice>;

export const partsOf = (record: Record<string, number>): PilePart[] =>
  Object.entries(record).map(([pigment, parts]) => ({ pigment, parts }));

export const pileOf = (
  name: string,
  parts: Record<string, number> | null,
  more: Partial<PassagePile> = {},
): PassagePile => ({
  id: name,
  name,
  parts: parts === null ? null : partsOf(parts),
  cover: { cm2: 100 },
  film: 'body colour',
  ...more,
});

export const passageOf = (
  name: string,
  piles: readonly PassagePile[],
  layers: Passage['layers'] = [],
): Passage => ({ id: name, name, piles, layers });

export const askedOf = (
  passages: readonly Passage[],
  rules: Partial<DayRequest['rules']> = {},
): DayRequest => ({
  date: '2026-05-14',
  palettes: [{ name: 'Mill', passages }],
  rules: { ...DEFAULT_RULES, ...rules },
  leftovers: [],
});

export const entryOf = (pigment: string, more: Partial<StockEntry> = {}): StockEntry => ({
  ...draftOf(pigment, more.form ?? 'tube'),
  id: `${pigment}-${more.lot ?? ''}-${more.form ?? 'tube'}`,
  ...more,
  pigment,
});
export const stockOf = (entries: readonly StockEntry[], white: string | null = null): Stock => ({
  name: 'test',
  surface: STARTER_SURFACE,
  white,
  entries,
  own: [],
});

export const STARTER: Studio = { shelf: starterShelf(), stock: null };
export const WHOLE: Studio = { shelf: wholeShelf(), stock: null };
/** A shelf of few paints: quick to search. */
export const shelfWith = (...ids: string[]) => ({
  ...starterShelf(),
  paints: ids.map((id) => ownPaint(id)!),
});

export function planned(asked: DayRequest, studio: Studio): Day {
  const day = planDay(asked, studio);
  if (!day.ok)
    throw new Error(day.fault.map((one) => paletteFaultWords(one, plainNumber)).join(' '));
  return day.value;
}

/** A day of one to three palettes with piles of these pigments. */
export function randomDay(
  d: Dice,
  pigments: readonly string[],
  rules: Partial<DayRequest['rules']> = {},
): DayRequest {
  let pile = 0;
  const parts = (): PilePart[] => {
    const chosen = new Map<string, number>();
    for (let i = d.whole(1, 4); i > 0; i--) chosen.set(d.one(pigments), d.whole(1, 12));
    return partsOf(Object.fromEntries(chosen));
  };
  const passage = (n: number): Passage => ({
    id: `passage ${n}`,
    name: `Passage ${n}`,
    canvas: { widthCm: d.whole(20, 90), heightCm: d.whole(20, 90) },
    layers:
      d.next() < 0.5
        ? []
        : [
            {
              date: `2026-0${d.whole(3, 4)}-${d.whole(10, 28)}`,
              film: d.one(FILM_WORDS),
              parts: parts(),
            },
          ],
    piles: Array.from({ length: d.whole(1, 5) }, (): PassagePile => {
      pile++;
      return {
        id: `pile ${pile}`,
        name: `pile ${pile}`,
        parts: parts(),
        cover: d.next() < 0.5 ? { cm2: d.whole(5, 3000) } : { share: d.whole(1, 30) / 100 },
        film: d.one(FILM_WORDS),
        coats: d.whole(1, 3),
      };
    }),
  });
  return {
    ...askedOf([], rules),
    palettes: Array.from({ length: d.whole(1, 3) }, (_, n) => ({
      name: `Palette ${n + 1}`,
      passages: [passage(n)],
    })),
  };
}
