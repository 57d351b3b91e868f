import { type Box, boxesOverlap, estimateTextWidth } from './label-text.ts';

/** A cloth on the line: its share of the whole, and whether it is the small bright accent. */
interface LineItem {
  readonly name: string;
  readonly share: number;
  readonly accent?: boolean | undefined;
}

/** Layout of one cloth, px. */
interface LinePlace {
  readonly index: number;
  /** Space for the cloth. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly how: 'one peg' | 'two pegs' | 'strip';
  /**
   * The clickable column. Columns lie side by side, at least 44 px wide, or equally wide if that
   * does not fit.
   */
  readonly press: { readonly left: number; readonly width: number };
  /** Centre and row of the name. */
  readonly label: { readonly x: number; readonly row: number; readonly box: Box };
}

/** Layout of the whole line, px. */
interface ClothLineLayout {
  readonly width: number;
  /** Height of the wall with the cloths; `height` adds the names below. */
  readonly wall: number;
  readonly height: number;
  /** From back to front. */
  readonly places: readonly LinePlace[];
}

/** Font size of the names, px. */
export const NAME_SIZE = 14;
const ROW = 26;
/** Margin left and right, px. */
const EDGE = 8;

/**
 * Lays out cloths side by side, each wider than its share so that neighbours overlap, with accents
 * as ribbons over the seams and names below in as many rows as they need.
 *
 * @param width of the whole, px
 */
export function layOutClothLine(hangings: readonly LineItem[], width: number): ClothLineLayout {
  const wall = Math.round(Math.min(460, Math.max(200, width * 0.52)));
  const main = hangings.map((hanging, index) => ({ ...hanging, index })).filter((h) => !h.accent);
  const accents = hangings.map((hanging, index) => ({ ...hanging, index })).filter((h) => h.accent);
  const room = width - 2 * EDGE;
  // On a phone the shares are visible only if small cloths stay as narrow as a finger.
  const least = Math.min(width < 480 ? 44 : 56, room / Math.max(1, main.length + accents.length));
  const sum = main.reduce((all, { share }) => all + Math.max(0.001, share), 0) || 1;
  const columns = fitWidths(
    main.map(({ share }) => (Math.max(0.001, share) / sum) * room),
    least,
    room,
  );
  const places: LinePlace[] = [];
  let x = EDGE;
  const middles: { index: number; middle: number }[] = [];
  for (const [k, { index }] of main.entries()) {
    const column = columns[k] ?? 0;
    // Cloth tapers upward and at its ends, so it needs more space than its column.
    const cloth = Math.min(column * 1.3 + 24, room);
    const middle = x + column / 2;
    const tall = wall * (0.97 - 0.1 * ((k * 0.618) % 1));
    places.push({
      index,
      left: Math.min(width - cloth, Math.max(0, middle - cloth / 2)),
      top: 2,
      width: cloth,
      height: tall,
      how: cloth > tall * 0.72 ? 'two pegs' : 'one peg',
      press: { left: x, width: column },
      label: { x: middle, row: 0, box: { left: 0, top: 0, right: 0, bottom: 0 } },
    });
    middles.push({ index, middle });
    x += column;
  }
  const seams = places.slice(0, Math.max(1, main.length - 1)).map(({ press }) => press);
  const each = Math.max(1, seams.length);
  for (const [k, { index, share }] of accents.entries()) {
    const seam = seams[k % each];
    const at = seam ? seam.left + seam.width : width / 2;
    // A larger accent is a kerchief, a small one a ribbon.
    const kerchief = share >= 0.02 && width >= 480;
    const wide = kerchief ? Math.min(118, width * 0.12) : Math.max(26, Math.min(54, width * 0.06));
    const middle = Math.min(width - wide, Math.max(wide, at + Math.floor(k / each) * wide));
    places.push({
      index,
      left: middle - wide / 2,
      top: wall * 0.04,
      width: wide,
      height: wall * (kerchief ? 0.5 : 0.62),
      how: kerchief ? 'one peg' : 'strip',
      press: { left: middle - 22, width: 44 },
      label: { x: middle, row: 0, box: { left: 0, top: 0, right: 0, bottom: 0 } },
    });
    middles.push({ index, middle });
  }
  const taken: Box[] = [];
  const named = new Map<number, LinePlace['label']>();
  let rows = 1;
  for (const { index, middle } of middles.sort((a, b) => a.middle - b.middle)) {
    const words = Math.min(width, estimateTextWidth(hangings[index]?.name ?? '', NAME_SIZE) + 12);
    const centre = Math.min(width - words / 2, Math.max(words / 2, middle));
    for (let row = 0; ; row++) {
      const box = {
        left: centre - words / 2,
        right: centre + words / 2,
        top: wall + row * ROW,
        bottom: wall + (row + 1) * ROW - 2,
      };
      if (taken.some((other) => boxesOverlap(box, other))) continue;
      taken.push(box);
      named.set(index, { x: centre, row, box });
      rows = Math.max(rows, row + 1);
      break;
    }
  }
  return {
    width,
    wall,
    height: wall + rows * ROW,
    places: clickColumns(places, least, room).map((place) => ({
      ...place,
      label: named.get(place.index) ?? place.label,
    })),
  };
}

/** Clickable columns side by side in hanging order; ribbons take theirs from the cloths. */
function clickColumns(places: readonly LinePlace[], least: number, room: number): LinePlace[] {
  const middle = ({ press }: LinePlace) => press.left + press.width / 2;
  const inOrder = [...places].sort((a, b) => middle(a) - middle(b));
  const widths = fitWidths(
    inOrder.map(({ press }) => press.width),
    least,
    room,
  );
  let left = EDGE;
  const presses = inOrder.map(({ index }, k) => {
    const press = { left, width: widths[k]! };
    left += press.width;
    return [index, press] as const;
  });
  const found = new Map(presses);
  return places.map((place) => ({ ...place, press: found.get(place.index)! }));
}

/** Raises widths below `least` to it, and shrinks the others to keep the sum at `room`. */
function fitWidths(widths: readonly number[], least: number, room: number): number[] {
  const small = widths.filter((w) => w < least);
  const spare = room - small.length * least;
  const large = widths.reduce((sum, w) => sum + (w < least ? 0 : w), 0) || 1;
  const once = widths.map((w) => (w < least ? least : (w / large) * spare));
  return once.some((w) => w < least - 0.01) && once.length > small.length
    ? fitWidths(once, least, room)
    : once;
}
