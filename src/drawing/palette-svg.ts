import { hexOf } from '../colour/gamut-mapping.ts';
import { EMPTY_MARKUP, type Markup, markup } from '../markup.ts';
import type { Day, PalettePlan } from '../palette/day-plan.ts';
import { joinWords } from '../wording.ts';

/** A heap to draw: `amount` in cm3. */
interface DrawnPile {
  readonly key: string;
  readonly name: string;
  readonly hex: string;
  readonly amount: number;
  /** Number or letter that replaces the name where space is short; the sheet's lists explain it. */
  readonly mark: string;
  /** Position of a pigment along the edge: 0 beside the thumb hole, 1 at the far end. */
  readonly place?: number;
}

/** Letter of a mixed pile: "A", "B". */
export const letterOf = (at: number): string => String.fromCharCode(65 + (at % 26));

/** Layout of the drawing, in px; the palette on screen has the same shape. */
export interface PaletteLayout {
  readonly width: number;
  readonly height: number;
  readonly mirrored: boolean;
  readonly board: {
    readonly height: number;
    readonly outline: string;
    readonly hole: {
      readonly x: number;
      readonly y: number;
      readonly rx: number;
      readonly ry: number;
    };
  };
  readonly seats: readonly {
    readonly kind: 'pigment' | 'mixed';
    readonly index: number;
    readonly x: number;
    readonly y: number;
    readonly radius: number;
    readonly lines: readonly string[];
    /** Number that replaces the name; the key below explains it. */
    readonly figure?: number;
    /** The number is drawn on the heap itself. */
    readonly upon?: boolean;
    readonly label: { readonly left: number; readonly right: number; readonly top: number };
  }[];
  readonly key: readonly { readonly x: number; readonly y: number; readonly words: string }[];
}

/** The heaps of a palette: pigments in seat order, mixed piles in row order. */
export function pilesOf(palette: PalettePlan): {
  readonly pigments: readonly DrawnPile[];
  readonly mixed: readonly DrawnPile[];
} {
  return {
    pigments: palette.pigments
      .filter(({ inSeat }) => inSeat > 0)
      .map(({ key, label, lab, inSeat, place }) => ({
        key,
        place,
        name: label.replace(/ \(.*\)$/, ''),
        hex: hexOf(lab),
        amount: inSeat,
        mark: String(palette.preparing.findIndex((one) => one.key === key) + 1),
      })),
    mixed: palette.mixed.map(({ key, pile, lab, amount }, at) => ({
      key,
      name: pile.name,
      hex: hexOf(lab),
      amount: amount.prepare,
      mark: letterOf(at),
    })),
  };
}

/** The palette in one sentence, as the drawing's text alternative. */
export function paletteWords(palette: PalettePlan, rules: Day['rules']): string {
  const { pigments, mixed } = pilesOf(palette);
  const names = (piles: readonly DrawnPile[]) => joinWords(piles.map(({ name }) => name));
  return [
    `${palette.name}: ${rules.shape === 'oval' ? 'an oval' : 'a square-cornered'} palette, held in the ${rules.hand} hand`,
    pigments.length > 0 ? `from the thumb hole along the edge ${names(pigments)}` : '',
    mixed.length > 0 ? `below, in their rows, ${names(mixed)}` : '',
  ]
    .filter((words) => words !== '')
    .join('; ');
}

/** Line height in px. */
const LINE = 15;
/** Font size in px. The layout assumes 13 in a wide typeface; a plain one leaves room for more. */
const SIZE = 15;

/** White outline for text on paint of any colour. */
const HALO: Markup = { html: ' stroke="#fff" stroke-width="4" paint-order="stroke"' };

/**
 * Outline of a heap as an SVG path: roughly a circle of radius 1, always the same for the same
 * name.
 */
function heapPath(name: string): string {
  let seed = 7;
  for (let i = 0; i < name.length; i++) seed = (seed * 31 + name.charCodeAt(i)) % 1009;
  const points = Array.from({ length: 12 }, (_, k) => {
    const way = (2 * Math.PI * k) / 12;
    const r = 1 + 0.07 * Math.cos(2 * way + seed) + 0.05 * Math.cos(3 * way + 1.7 * seed);
    return [r * Math.cos(way), 0.92 * r * Math.sin(way)] as const;
  });
  const mid = (k: number) => {
    const [p, q] = [points[k % 12]!, points[(k + 1) % 12]!];
    return `${((p[0] + q[0]) / 2).toFixed(3)} ${((p[1] + q[1]) / 2).toFixed(3)}`;
  };
  const curves = points.map((_, k) => {
    const next = points[(k + 1) % 12]!;
    return `Q${next[0].toFixed(3)} ${next[1].toFixed(3)} ${mid(k + 1)}`;
  });
  return `M${mid(0)}${curves.join('')}Z`;
}

/**
 * Draws the palette in ink and flat colour, for paper: outline, heaps sized by amount, names.
 * @param words text alternative
 * @param marks omit the key and use the marks of the sheet's lists where space is short
 * @returns an SVG element without a width, so that it fills its container
 */
export function drawPalette(
  laid: PaletteLayout,
  piles: { readonly pigments: readonly DrawnPile[]; readonly mixed: readonly DrawnPile[] },
  words: string,
  marks = false,
): Markup {
  const { board, width, mirrored } = laid;
  const height = marks ? board.height : laid.height;
  const { x, y, rx, ry } = board.hole;
  const hole = `M${x - rx} ${y}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;
  const turn = mirrored ? `translate(${width} 0) scale(-1 1)` : 'translate(0 0)';
  const heaps = laid.seats.map((seat) => {
    const pile = (seat.kind === 'pigment' ? piles.pigments : piles.mixed)[seat.index];
    if (pile === undefined) return EMPTY_MARKUP;
    const middle = (seat.label.left + seat.label.right) / 2;
    return markup`<g data-pile="${pile.key}"><path transform="translate(${seat.x.toFixed(1)} ${seat.y.toFixed(1)}) scale(${seat.radius.toFixed(2)})" d="${heapPath(pile.name)}" fill="${pile.hex}" stroke="#222" stroke-width="${(0.8 / seat.radius).toFixed(3)}"/>${(
      marks && seat.figure !== undefined ? [pile.mark] : seat.lines
    ).map(
      (line, n) =>
        markup`<text x="${middle.toFixed(1)}" y="${(seat.label.top + LINE * (n + 0.78)).toFixed(1)}" text-anchor="middle"${seat.upon ? HALO : EMPTY_MARKUP}>${line}</text>`,
    )}</g>`;
  });
  const keys = (marks ? [] : laid.key).map(
    (entry) => markup`<text x="${entry.x}" y="${entry.y}">${entry.words}</text>`,
  );
  return markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height + 4}" role="img" font-family="Arial, Helvetica, 'Liberation Sans', sans-serif" font-size="${SIZE}" fill="#111"><title>${words}</title><path transform="${turn}" d="${board.outline}${hole}" fill="#fff" fill-rule="evenodd" stroke="#222" stroke-width="2"/>${heaps}${keys}</svg>`;
}
