import { plainNumber } from '../number-format.ts';
import type { Board } from '../palette/allocate.ts';
import type { Day, PalettePlan, PilePlan } from '../palette/day-plan.ts';
import type { PaletteRequest } from '../palette/day-request.ts';
import type { Studio } from '../palette/passage.ts';
import { inManualOrder, mixedOrder } from '../palette/seat-order.ts';
import { sheetOf } from './morning-sheet.ts';
import { fitOf, SMALLEST_READABLE } from './page-fit.ts';

/** Most mixed piles on one palette (common practice: five to nine heaps). */
export const MOST_MIXED = 9;

/**
 * Divides a palette's piles over several boards, about evenly: the rows in sequence, light to dark
 * or in their manual order, then the unmixed pigments.
 */
export function divideOverBoards(
  asked: number,
  palette: PaletteRequest,
  piles: readonly PilePlan[],
  of: number,
): readonly Board[] {
  if (of === 1) return [{ asked, palette, piles, part: 1, of: 1 }];
  const mixed = mixedOrder(piles.filter(({ pure }) => !pure));
  const rows = [
    ...(palette.order ? inManualOrder(mixed, palette.order) : mixed),
    ...piles.filter(({ pure }) => pure),
  ];
  return Array.from({ length: of }, (_, at) => {
    const here = rows.slice(
      Math.round((at * rows.length) / of),
      Math.round(((at + 1) * rows.length) / of),
    );
    // A passage without piles today reports its state on the first board.
    const passages = palette.passages.filter(
      ({ id }) =>
        here.some(({ passage }) => passage.id === id) ||
        (at === 0 && !piles.some(({ passage }) => passage.id === id)),
    );
    const name = `${palette.name}, ${at + 1} of ${of}`;
    return { asked, palette: { ...palette, name, passages }, piles: here, part: at + 1, of };
  });
}

/** Indexed by the number of mixed piles. */
const RATIOS = [1.2, 1.2, 1.2, 1.2, 1.2, 1.2, 1.23, 1.28, 1.28, 1.5];
/** Largest height over width of a palette's drawing; a test checks it. */
export function ratioFor({ mixed, pigments }: Pick<PalettePlan, 'mixed' | 'pigments'>): number {
  const rows = RATIOS[Math.min(mixed.length, MOST_MIXED)]!;
  return rows + (pigments.length > 8 ? 0.17 : 0);
}

/** Whether a palette holds more than one board carries, or than one page shows legibly. */
export function exceedsBoard(day: Day, index: number, studio: Studio): boolean {
  const palette = day.palettes[index]!;
  const { mixed, piles } = palette;
  if (piles.length < 2) return false;
  if (mixed.length > MOST_MIXED) return true;
  const { fit } = fitOf(sheetOf(day, index, studio, plainNumber), ratioFor(palette));
  return fit === 'over' || fit > SMALLEST_READABLE;
}
