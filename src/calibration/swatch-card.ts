import type { Part } from './painted-swatch.ts';

export type Paper = 'A4' | 'letter';

/** Width and height in millimetres (ISO 216; ANSI/ASME Y14.1). */
export const PAPER_MM: Record<Paper, readonly [width: number, height: number]> = {
  A4: [210, 297],
  letter: [215.9, 279.4],
};

/** One paint to be painted on a card. */
export interface CardPaint {
  readonly pigment: string;
  readonly label: string;
  /** Of its paste, g/cm3; null if unknown, then no weights are printed. */
  readonly density: number | null;
  /** Safety advice; empty if there is none. */
  readonly caution: string;
}

/** One rectangle of a card, in millimetres from the top left corner of the page. */
export interface CardPlace {
  readonly number: number;
  /** A paint or a reference; `white` and `grey` references are at the top and at the bottom. */
  readonly kind: 'paint' | 'white' | 'grey' | 'black';
  /** By volume; empty for a reference. */
  readonly parts: readonly Part[];
  readonly label: string;
  /** How to measure the parts; empty for masstones. */
  readonly measure: string;
  /** Centre. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Layout of one page of swatches, for printing it and for finding it in a photograph. */
export interface SwatchCard {
  /** Name printed at the top: "Card 3, 17 May 2031". */
  readonly name?: string;
  readonly paper: Paper;
  readonly page: number;
  readonly pages: number;
  /** Pigment of the studio white. */
  readonly white: string;
  readonly places: readonly CardPlace[];
  readonly cautions: readonly string[];
}

/**
 * Corner marks: a black ring around a white eye; the first mark has a black pupil in the eye.
 * `outer`, `eye` and `pupil` are radii, `fromEdge` the distance of the centre from both page edges,
 * in millimetres.
 */
export const MARK_MM = { outer: 7, eye: 4, pupil: 2, fromEdge: 15 } as const;

/** Centres of the marks in millimetres, clockwise from the top left one, which has the pupil. */
export function markCentres(paper: Paper): readonly (readonly [x: number, y: number])[] {
  const [width, height] = PAPER_MM[paper];
  const near = MARK_MM.fromEdge;
  return [
    [near, near],
    [width - near, near],
    [width - near, height - near],
    [near, height - near],
  ];
}

interface CardOptions {
  /** Name printed at the top. */
  readonly name?: string;
  readonly paper?: Paper;
  /** Parts of white to one part of the pigment for each tint; default one tint of 4. */
  readonly tints?: readonly number[];
  /** Further mixtures to paint, such as suggested ones. */
  readonly mixtures?: readonly { readonly label: string; readonly parts: readonly Part[] }[];
}

const PLACE_MM = { width: 22, height: 16 } as const;
const PITCH = { x: 37, y: 26 } as const;
const COLUMNS = 5;
const TOP = 32;
const FOOT = 30;

/** Describes parts by volume in level spoons and, if all densities (g/cm3) are known, by weight. */
export function measureOf(
  parts: readonly { readonly parts: number; readonly density: number | null }[],
): string {
  const whole = (n: number) => Number(n.toPrecision(3)).toString();
  const volume = `${parts.map((part) => whole(part.parts)).join(' : ')} level spoons`;
  if (parts.some(({ density }) => density === null)) return volume;
  const least = Math.min(...parts.map((part) => part.parts * part.density!));
  // The smallest part is one gram, which kitchen scales of 0.1 g measure well enough.
  const grams = parts.map((part) => ((part.parts * part.density!) / least).toFixed(1));
  return `${volume}; ${grams.join(' : ')} g`;
}

/**
 * Lays out cards for a set of paints: the white's masstone, then for every paint its masstone and
 * its tints with the white, on as many pages as needed. Each page has a white, a grey and a black
 * reference at the top, and a second grey and white at the bottom.
 *
 * @param paints without the white
 * @throws RangeError for a tint that is not above 0
 */
export function planCards(
  white: CardPaint,
  paints: readonly CardPaint[],
  options: CardOptions = {},
): SwatchCard[] {
  const { paper = 'A4', tints = [4], mixtures = [] } = options;
  if (!tints.every((tint) => tint > 0 && Number.isFinite(tint)))
    throw new RangeError(`tints of ${tints.join(', ')}`);
  const all = [white, ...paints];
  const rows: Omit<CardPlace, 'number' | 'x' | 'y' | 'width' | 'height'>[][] = [
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
    // One line for all paints with the same caution.
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
      places: layOutPlaces([HEAD, ...mine, TAIL], paper, at * perPage * COLUMNS),
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

/** Packs groups into lines of {@link COLUMNS}; only groups longer than a line are split. */
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

/** Numbers the places from `before` + 1 and sets their positions. */
function layOutPlaces(
  lines: readonly (readonly Omit<CardPlace, 'number' | 'x' | 'y' | 'width' | 'height'>[])[],
  paper: Paper,
  before: number,
): CardPlace[] {
  const [width, height] = PAPER_MM[paper];
  const left = (width - (COLUMNS - 1) * PITCH.x) / 2;
  // The last line is always at the bottom of the page, where it samples the illumination.
  const bottom = height - FOOT - PITCH.y / 2;
  let number = before;
  return lines.flatMap((line, row) =>
    line.map((place, column) => {
      number++;
      const foot = row === lines.length - 1;
      // The bottom references are right-aligned, away from those at the top.
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
