import type { PaletteAsked } from './asked.ts';
import { CLOSEST, fitOf } from './fit.ts';
import type { Studio } from './passage.ts';
import type { Day, PalettePlan, PilePlan } from './plan.ts';
import { asSet, mixedOrder } from './seat.ts';
import { sheetOf } from './sheet.ts';

/** Mixed piles that one palette carries (common practice: five to nine heaps). */
export const MOST_MIXED = 9;

/** A palette as it is laid: all that was asked for on it, or one board of several. */
export interface Board {
  /** Which of the palettes that were asked for. */
  readonly asked: number;
  readonly palette: PaletteAsked;
  readonly piles: readonly PilePlan[];
  /** The first of one unless it was too much for one. */
  readonly part: number;
  readonly of: number;
}

/**
 * Deals a palette's piles onto so many boards, about evenly: its rows one after the other, light to
 * dark or as they were set by hand; what comes as it is goes where its passage's mixtures are.
 */
export function dealt(
  asked: number,
  palette: PaletteAsked,
  piles: readonly PilePlan[],
  of: number,
): readonly Board[] {
  if (of === 1) return [{ asked, palette, piles, part: 1, of: 1 }];
  const mixed = mixedOrder(piles.filter(({ pure }) => !pure));
  const rows = [
    ...(palette.order ? asSet(mixed, palette.order) : mixed),
    ...piles.filter(({ pure }) => pure),
  ];
  return Array.from({ length: of }, (_, at) => {
    const here = rows.slice(
      Math.round((at * rows.length) / of),
      Math.round(((at + 1) * rows.length) / of),
    );
    // A passage that has no pile today says on the first board how it stands.
    const passages = palette.passages.filter(
      ({ id }) =>
        here.some(({ passage }) => passage.id === id) ||
        (at === 0 && !piles.some(({ passage }) => passage.id === id)),
    );
    const name = `${palette.name}, ${at + 1} of ${of}`;
    return { asked, palette: { ...palette, name, passages }, piles: here, part: at + 1, of };
  });
}

/** By the number of mixed piles. */
const RATIOS = [1.2, 1.2, 1.2, 1.2, 1.2, 1.2, 1.23, 1.28, 1.28, 1.5];
/** Height over width of a palette's drawing, at most; the tests hold it to account. */
export function ratioFor({ mixed, pigments }: Pick<PalettePlan, 'mixed' | 'pigments'>): number {
  const rows = RATIOS[Math.min(mixed.length, MOST_MIXED)]!;
  return rows + (pigments.length > 8 ? 0.17 : 0);
}

/** Whether a palette is more than one board carries, or more than one page says legibly. */
export function isTooMuch(day: Day, index: number, studio: Studio): boolean {
  const palette = day.palettes[index]!;
  const { mixed, piles } = palette;
  if (piles.length < 2) return false;
  if (mixed.length > MOST_MIXED) return true;
  const { fit } = fitOf(sheetOf(day, index, studio), ratioFor(palette));
  return fit === 'over' || fit > CLOSEST;
}
