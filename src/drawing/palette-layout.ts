import { type Box, boxesOverlap, breakLines, estimateTextWidth } from './label-text.ts';
import { relativeLuminance } from './light-blend.ts';
import { type BoardOutline, type BoardShape, boardOutline, boxOf } from './palette-board.ts';
import {
  type BoardPile,
  LABEL_LINE_PX,
  mixturePositions,
  pigmentPositions,
} from './pile-positions.ts';

/** Position of a pile and its label on the board, px. */
export interface Seat {
  readonly kind: 'pigment' | 'mixed';
  /** Index into the pigments or the mixtures. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Lines and box of the label; only the number if the name does not fit. */
  readonly lines: readonly string[];
  readonly label: Box;
  /** Number that stands for the name in the key below, if any. */
  readonly figure?: number;
  /** True if that number stands on the pile itself. */
  readonly upon?: boolean;
}

/** A laid-out board, px. `height` includes the key below the board. */
interface PlacedPalette {
  readonly board: BoardOutline;
  readonly mirrored: boolean;
  readonly width: number;
  readonly height: number;
  readonly seats: readonly Seat[];
  readonly key: readonly { readonly x: number; readonly y: number; readonly words: string }[];
}

/** Order of the mixed piles. */
export type MixedOrder = 'light to dark' | 'as given';

/** Least radius of a visible heap, and the radius that a number on a heap needs, px. */
const SMALLEST = 5;
const NUMBER_RADIUS = 9;
/** Font size of labels on the board, px. */
export const LABEL_SIZE = 13;

/**
 * Lays out a palette: pigments along the edge in the given order, the first beside the thumb hole;
 * mixed piles below; the middle free; labels without overlap.
 *
 * @param hand the hand that holds the palette; the thumb hole is on that side
 * @param width px
 * @param order of the mixed piles: by luminance, or as given
 * @param ratio height over width, before rows of mixtures make the board taller
 */
export function layOutPalette(
  pigments: readonly BoardPile[],
  mixed: readonly BoardPile[],
  shape: BoardShape,
  hand: 'left' | 'right',
  width: number,
  order: MixedOrder = 'light to dark',
  ratio = width < 520 ? 1.2 : 0.62,
): PlacedPalette {
  const mirrored = hand === 'right';
  const tall = width < 520;
  const largest =
    [...pigments, ...mixed].reduce((most, { amount }) => Math.max(most, amount), 0) || 1;
  const rows = mixed.map((pile, index) => ({ ...pile, index }));
  if (order === 'light to dark')
    rows.sort((a, b) => relativeLuminance(b.hex) - relativeLuminance(a.hex));
  // Many mixtures move closer together before the board grows.
  const closer = Math.max(0.6, Math.min(1, Math.sqrt(4 / Math.max(1, mixed.length))));
  const bound = closer * (tall ? Math.min(width * 0.07, 26) : Math.min(width * 0.05, 42));
  const inset = bound + 9;
  const rowHeight = 2 * bound + LABEL_LINE_PX + 14;
  let board = boardOutline(shape, width, Math.round(width * ratio));
  let spots = pigmentPositions(board, pigments, inset);
  // Make the board deeper until the mixtures fit below.
  for (let more = 0; more < 30; more++) {
    const laid = mixturePositions(board, spots, rows, bound, rowHeight);
    if (laid) {
      spots = [...spots, ...laid];
      break;
    }
    board = boardOutline(shape, width, Math.round(board.height + rowHeight * 0.25));
    spots = pigmentPositions(board, pigments, inset);
  }
  const { hole, height } = board;
  // One scale for all piles, as large as the closest pair allows.
  let unit = bound / Math.sqrt(largest);
  for (const [k, a] of spots.entries()) {
    unit = Math.min(
      unit,
      (Math.hypot(a.x - hole.x, a.y - hole.y) - hole.rx - 4) / (1.1 * Math.sqrt(a.amount || 1e-9)),
    );
    for (const b of spots.slice(k + 1)) {
      const apart = Math.hypot(a.x - b.x, a.y - b.y) - 4;
      unit = Math.min(unit, apart / (1.1 * (Math.sqrt(a.amount) + Math.sqrt(b.amount)) || 1e-9));
    }
  }
  const placed = spots.map((spot) => ({
    ...spot,
    radius: Math.max(SMALLEST, unit * Math.sqrt(Math.max(0, spot.amount))),
  }));
  const taken: Box[] = [
    boxOf(hole.x, hole.y, hole.rx + 3, hole.ry + 3),
    // A number may have to stand on its own pile: keep labels at that distance.
    ...placed.map(({ x, y, radius }) => boxOf(x, y, Math.max(NUMBER_RADIUS, radius * 1.1))),
  ];
  const free = (box: Box) =>
    [box.left, box.right].every((x) => [box.top, box.bottom].every((y) => board.holds(x, y, 3))) &&
    !taken.some((other) => boxesOverlap(box, other, 2));
  const key: string[] = [];
  const seats = placed.map((spot): Seat => {
    const pile = (spot.kind === 'pigment' ? pigments : mixed)[spot.index];
    const name = pile?.name ?? '';
    const { kind, index, x, y, radius } = spot;
    const settle = (lines: readonly string[], box: Box, figure?: number): Seat => {
      taken.push(box);
      const seat = { kind, index, x, y, radius, lines, label: box };
      return figure === undefined ? seat : { ...seat, figure };
    };
    for (const room of [120, 92, 72, 58]) {
      const lines = breakLines(name, LABEL_SIZE, room, room > 80 ? 2 : 3);
      if (lines.some((line) => line.endsWith('…'))) continue;
      const box = candidates(lines, spot, radius, board).find(free);
      if (box) return settle(lines, box);
    }
    const figure = key.length + 1;
    key.push(`${figure} ${name}`);
    const lines = [String(figure)];
    const box = candidates(lines, spot, radius, board).find(free);
    return box
      ? settle(lines, box, figure)
      : { ...settle(lines, boxOf(x, y, 8), figure), upon: true };
  });
  const widest = Math.max(...key.map((words) => estimateTextWidth(words, LABEL_SIZE)));
  const columns = Math.max(1, Math.floor(Math.min(width / 170, (width - 12) / (widest + 10))));
  const legend = key.map((words, k) => ({
    x: 12 + ((width - 12) / columns) * (k % columns),
    y: height + 22 + Math.floor(k / columns) * 20,
    words: breakLines(words, LABEL_SIZE, (width - 12) / columns - 10, 1)[0] ?? words,
  }));
  const turn = (box: Box): Box =>
    mirrored ? { ...box, left: width - box.right, right: width - box.left } : box;
  return {
    board,
    mirrored,
    width,
    height: height + (key.length > 0 ? 12 + Math.ceil(key.length / columns) * 20 : 0),
    seats: seats.map((seat) => ({
      ...seat,
      x: mirrored ? width - seat.x : seat.x,
      label: turn(seat.label),
    })),
    key: legend,
  };
}

/**
 * Candidate boxes for a label round its pile, in order of preference: below, inward, below and
 * shifted, above, outward.
 */
function candidates(
  lines: readonly string[],
  { x, y }: { x: number; y: number },
  radius: number,
  board: BoardOutline,
): Box[] {
  const wide = Math.max(...lines.map((line) => estimateTextWidth(line, LABEL_SIZE)));
  const tall = lines.length * LABEL_LINE_PX;
  const gap = Math.max(NUMBER_RADIUS, radius * 1.1) + 4;
  const put = (cx: number, cy: number): Box => boxOf(cx, cy, wide / 2, tall / 2);
  const below = put(x, y + gap + tall / 2);
  const above = put(x, y - gap - tall / 2);
  const right = put(x + gap + wide / 2, y);
  const left = put(x - gap - wide / 2, y);
  const inward = x < board.width / 2 ? right : left;
  const outward = x < board.width / 2 ? left : right;
  const slid = [-0.35, 0.35].map((part) => put(x + part * wide, y + gap + tall / 2));
  return [below, inward, ...slid, above, outward];
}
