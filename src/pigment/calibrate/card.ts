import type { Part } from './swatches.ts';

export type Paper = 'A4' | 'letter';

/** Width and height in millimetres (ISO 216; ANSI/ASME Y14.1). */
export const PAPER_MM: Record<Paper, readonly [width: number, height: number]> = {
  A4: [210, 297],
  letter: [215.9, 279.4],
};

/** One paint that is to be brushed out. */
export interface CardPaint {
  readonly pigment: string;
  readonly label: string;
  /** Of its paste, g/cm3; null where it is not known, and then no weights are printed. */
  readonly density: number | null;
  /** What to mind when it is handled; empty where there is nothing. */
  readonly caution: string;
}

/** One rectangle of a card. Millimetres from the top left corner of the page. */
export interface Place {
  readonly number: number;
  /** A paint, or one of the references: `white` and `grey` stand at the top and at the foot. */
  readonly kind: 'paint' | 'white' | 'grey' | 'black';
  /** By volume; empty for a reference. */
  readonly parts: readonly Part[];
  readonly label: string;
  /** How it is measured out; empty for masstones. */
  readonly measure: string;
  /** Its centre. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One page of swatches as it is printed, and as it is looked for in a photograph. */
export interface Card {
  /** What the painter knows this card by, printed at its head: "Card 3, 17 May 2031". */
  readonly name?: string;
  readonly paper: Paper;
  readonly page: number;
  readonly pages: number;
  /** Pigment of the studio white. */
  readonly white: string;
  readonly places: readonly Place[];
  readonly cautions: readonly string[];
}

/** Corner marks: a black ring about a white eye; in the eye of the first is a black pupil. */
export const MARK = { outer: 7, eye: 4, pupil: 2, fromEdge: 15 } as const;

/** Centres of the marks, clockwise from the top left one, which has the pupil. */
export function markCentres(paper: Paper): readonly (readonly [x: number, y: number])[] {
  const [width, height] = PAPER_MM[paper];
  const near = MARK.fromEdge;
  return [
    [near, near],
    [width - near, near],
    [width - near, height - near],
    [near, height - near],
  ];
}

export interface CardOptions {
  /** What the painter knows this card by, printed at its head. */
  readonly name?: string;
  readonly paper?: Paper;
  /** Parts of white to one of the pigment for each tint; one tint of 4 when left out. */
  readonly tints?: readonly number[];
  /** Further piles to brush out, such as a suggested mixture. */
  readonly mixtures?: readonly { readonly label: string; readonly parts: readonly Part[] }[];
}

export const PLACE_MM = { width: 22, height: 16 } as const;
const PITCH = { x: 37, y: 26 } as const;
const COLUMNS = 5;
const TOP = 32;
const FOOT = 30;

/** A tint's parts in words, by a simple measure and, where both pastes' densities are known, by weight. */
export function measureOf(
  parts: readonly { readonly parts: number; readonly density: number | null }[],
): string {
  const whole = (n: number) => Number(n.toPrecision(3)).toString();
  const volume = `${parts.map((part) => whole(part.parts)).join(' : ')} level spoons`;
  if (parts.some(({ density }) => density === null)) return volume;
  const least = Math.min(...parts.map((part) => part.parts * part.density!));
  // The smallest heap weighs one gram: kitchen scales of 0.1 g measure it well enough.
  const grams = parts.map((part) => ((part.parts * part.density!) / least).toFixed(1));
  return `${volume}; ${grams.join(' : ')} g`;
}

/**
 * Cards for a set of paints: the white's masstone first, then for every paint its masstone and its
 * tints with the white, as many pages as they need. Each page has a white, a grey and a black
 * reference at its head, and a second white and grey at its foot.
 *
 * @param paints without the white
 * @throws RangeError for a tint that is not above 0
 */
export function planCards(
  white: CardPaint,
  paints: readonly CardPaint[],
  options: CardOptions = {},
): Card[] {
  const { paper = 'A4', tints = [4], mixtures = [] } = options;
  if (!tints.every((tint) => tint > 0 && Number.isFinite(tint)))
    throw new RangeError(`tints of ${tints.join(', ')}`);
  const all = [white, ...paints];
  const rows: Omit<Place, 'number' | 'x' | 'y' | 'width' | 'height'>[][] = [
    [swatch(`${white.label}, alone`, [{ pigment: white.pigment, parts: 1 }], '')],
    ...paints.map((paint) => [
      swatch(`${paint.label}, alone`, [{ pigment: paint.pigment, parts: 1 }], ''),
      ...tints.map((tint) =>
        swatch(
          `${paint.label} 1, white ${Number(tint.toPrecision(3))}`,
          [
            { pigment: paint.pigment, parts: 1 },
            { pigment: white.pigment, parts: tint },
          ],
          measureOf([
            { parts: 1, density: paint.density },
            { parts: tint, density: white.density },
          ]),
        ),
      ),
    ]),
    ...mixtures.map(({ label, parts }) => [
      swatch(
        label,
        parts,
        measureOf(
          parts.map((part) => ({
            parts: part.parts,
            density: all.find(({ pigment }) => pigment === part.pigment)?.density ?? null,
          })),
        ),
      ),
    ]),
  ];
  const lines = linesOf(rows);
  const [, height] = PAPER_MM[paper];
  const perPage = Math.floor((height - TOP - FOOT) / PITCH.y) - 2;
  const pages = Math.ceil(lines.length / perPage);
  return Array.from({ length: pages }, (_, at) => {
    const mine = lines.slice(at * perPage, (at + 1) * perPage);
    const used = new Set(mine.flat().flatMap(({ parts }) => parts.map(({ pigment }) => pigment)));
    const dangerous = all.filter(({ pigment, caution }) => used.has(pigment) && caution !== '');
    // Paints of one danger share a line.
    const cautions = [...new Set(dangerous.map(({ caution }) => caution))].map((caution) => {
      const names = dangerous.filter((each) => each.caution === caution);
      return `${names.map(({ label }) => label).join(', ')}: ${caution}`;
    });
    return {
      ...(options.name ? { name: options.name } : {}),
      paper,
      page: at + 1,
      pages,
      white: white.pigment,
      places: laidOut([HEAD, ...mine, TAIL], paper, at * perPage * COLUMNS),
      cautions,
    };
  });
}

const swatch = (label: string, parts: readonly Part[], measure: string) => ({
  kind: 'paint' as const,
  label,
  parts,
  measure,
});
const reference = (kind: 'white' | 'grey' | 'black') => ({
  kind,
  label: `${kind} reference`,
  parts: [],
  measure: '',
});
const HEAD = [reference('white'), reference('grey'), reference('black')];
const TAIL = [reference('grey'), reference('white')];

/** Whole pigments side by side while they fit; one with more swatches than a line has runs on. */
function linesOf<T>(groups: readonly (readonly T[])[]): T[][] {
  const lines: T[][] = [];
  for (const group of groups) {
    const last = lines.at(-1);
    if (last && last.length + group.length <= COLUMNS) last.push(...group);
    else
      for (let at = 0; at < group.length; at += COLUMNS)
        lines.push([...group.slice(at, at + COLUMNS)]);
  }
  return lines;
}

function laidOut(
  lines: readonly (readonly Omit<Place, 'number' | 'x' | 'y' | 'width' | 'height'>[])[],
  paper: Paper,
  before: number,
): Place[] {
  const [width, height] = PAPER_MM[paper];
  const left = (width - (COLUMNS - 1) * PITCH.x) / 2;
  // The last line stands at the foot however few there are: it tells how the light falls there.
  const bottom = height - FOOT - PITCH.y / 2;
  let number = before;
  return lines.flatMap((line, row) =>
    line.map((place, column) => {
      number++;
      const foot = row === lines.length - 1;
      // The foot's references stand to the right, away from those at the head.
      const from = foot ? COLUMNS - line.length : 0;
      return {
        ...place,
        number,
        ...PLACE_MM,
        x: left + (from + column) * PITCH.x,
        y: foot ? bottom : TOP + PITCH.y * row + PITCH.y / 2 - 4,
      };
    }),
  );
}
