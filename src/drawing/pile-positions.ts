import type { BoardOutline } from './palette-board.ts';

/** Line height of labels on the board, px. */
export const LABEL_LINE_PX = 15;

/** A pile to lay out on the board. */
export interface BoardPile {
  readonly name: string;
  readonly hex: string;
  /** Amount, in one unit for all piles of the board; the heap's area is proportional to it. */
  readonly amount: number;
  /**
   * Position along the line of seats, 0 beside the hole to 1 at the far end; default: evenly
   * spread.
   */
  readonly place?: number;
}

/** Centre of a pile, px, before its size is known. */
interface PilePosition {
  readonly kind: 'pigment' | 'mixed';
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly amount: number;
}

/** Places the pigments along the line of seats. @param inset from the board's edge, px */
export const pigmentPositions = (
  board: BoardOutline,
  pigments: readonly BoardPile[],
  inset: number,
): PilePosition[] =>
  pigments.map((pile, index) => {
    const way = pile.place ?? (pigments.length === 1 ? 0 : index / (pigments.length - 1));
    return { kind: 'pigment', index, amount: pile.amount, ...board.seat(way, inset) };
  });

/**
 * Places the mixtures in rows between the thumb hole and the far seats; undefined if they do not
 * fit.
 *
 * @param order the mixtures in order, with their indices
 * @param bound largest radius of a heap, px
 * @param rowHeight px
 */
export function mixturePositions(
  board: BoardOutline,
  seats: readonly PilePosition[],
  order: readonly (BoardPile & { readonly index: number })[],
  bound: number,
  rowHeight: number,
): PilePosition[] | undefined {
  const { hole, width, height } = board;
  const clear = bound + LABEL_LINE_PX + 4;
  const spans: { y: number; from: number; to: number; holds: number }[] = [];
  let room = 0;
  const cell = Math.max(2 * bound + 8, Math.min(width * 0.16, 84));
  for (let y = height - 6 - bound - LABEL_LINE_PX - 8; y > height * 0.5; y -= rowHeight) {
    let [from, to] = board.chord(y + bound * 0.4, bound + 4);
    from = Math.max(from, width * 0.22);
    if (Math.abs(y - hole.y) < hole.ry + clear) from = Math.max(from, hole.x + hole.rx + 8);
    for (const seat of seats) {
      if (Math.abs(seat.y - y) > 1.7 * bound + LABEL_LINE_PX) continue;
      if (seat.x > width / 2) to = Math.min(to, seat.x - bound - 8);
      else from = Math.max(from, seat.x + bound + 8);
    }
    const holds = Math.floor((to - from) / cell);
    if (holds < 1) continue;
    spans.unshift({ y, from, to, holds });
    room += holds;
    if (room >= order.length) break;
  }
  if (room < order.length) return undefined;
  // Fill rows evenly; a short row looks better at the bottom.
  const spots: PilePosition[] = [];
  let next = 0;
  for (const [k, span] of spans.entries()) {
    const later = spans.slice(k + 1).reduce((sum, { holds }) => sum + holds, 0);
    const even = Math.ceil((order.length - next) / (spans.length - k));
    const count = Math.min(span.holds, Math.max(order.length - next - later, even));
    const pitch = (span.to - span.from) / Math.max(1, count);
    for (let m = 0; m < count; m++) {
      const pile = order[next];
      if (!pile) break;
      next++;
      spots.push({
        kind: 'mixed',
        index: pile.index,
        amount: pile.amount,
        x: span.from + pitch * (m + 0.5),
        y:
          span.y -
          Math.min(12, rowHeight * 0.1) * Math.cos(((m + 0.5) / count) * Math.PI * 2) * 0.5,
      });
    }
  }
  return spots;
}
