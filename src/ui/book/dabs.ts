import type { Card } from '../../book/card.ts';
import { shownOf } from '../drawn/screen.ts';

/** Colours as dabs of paint in a row: area as the share, the smallest still to be seen. */
export function dabs(
  colours: Card['colours'],
  height: number,
  from = 0,
): { x: number; r: number; hex: string }[] {
  const most = height / 2;
  const gap = height / 7;
  let x = from;
  return colours.map(({ lab, share }) => {
    const r = Math.max(most / 2.6, most * Math.sqrt(share));
    x += 2 * r + gap;
    return { x: x - r - gap, r, hex: shownOf(lab) };
  });
}
