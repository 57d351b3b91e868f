import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import { cssColourOf } from '../../state/screen-colour.ts';

/**
 * Geometry of colours as a row of paint dabs: area proportional to share, with a minimum radius so
 * that the smallest stay visible.
 * @param height of the row; the positions and radii are in the same unit
 * @param from   x of the left edge
 */
export function dabs(
  colours: EntrySummary['colours'],
  height: number,
  from = 0,
): { x: number; r: number; hex: string }[] {
  const most = height / 2;
  const gap = height / 7;
  let x = from;
  return colours.map(({ lab, share }) => {
    const r = Math.max(most / 2.6, most * Math.sqrt(share));
    x += 2 * r + gap;
    return { x: x - r - gap, r, hex: cssColourOf(lab) };
  });
}
