import { chroma, type Lab } from './lab.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

/** The dozen words that everything else refines. */
export type Family =
  | 'red'
  | 'orange'
  | 'yellow'
  | 'green'
  | 'blue'
  | 'violet'
  | 'purple'
  | 'pink'
  | 'brown'
  | 'olive'
  | 'grey'
  | 'black'
  | 'white';

/** A hue in words, and the family that it belongs to. */
export interface Hue {
  readonly word: string;
  readonly family: Family;
}

/**
 * What a hue is called where it is light, dark or dull. Sectors run by OKLab hue up to `below`
 * degrees. The limits are our own, set to the places where the Munsell hues change their common
 * names; a check compares them with the names of ISCC-NBS.
 */
interface Sector {
  readonly below: number;
  readonly hue: (L: number, C: number) => Hue;
}

const hue = (word: string, family: Family): Hue => ({ word, family });
const RED = hue('red', 'red');
const COOL_RED = hue('cool red', 'red');
const RED_ORANGE = hue('red-orange', 'orange');
const ORANGE = hue('orange', 'orange');
const GOLDEN = hue('golden yellow', 'yellow');
const CREAM = hue('cream', 'yellow');
const BUFF = hue('buff', 'yellow');
const YELLOW = hue('yellow', 'yellow');
const GREEN_YELLOW = hue('greenish yellow', 'yellow');
const YELLOW_GREEN = hue('yellow-green', 'green');
const LEAF = hue('leaf green', 'green');
const GREEN = hue('green', 'green');
const BLUE_GREEN = hue('blue-green', 'green');
const GREEN_BLUE = hue('greenish blue', 'blue');
const BLUE = hue('blue', 'blue');
const VIOLET_BLUE = hue('violet-blue', 'blue');
const VIOLET = hue('violet', 'violet');
const PURPLE = hue('purple', 'purple');
const RED_PURPLE = hue('red-purple', 'purple');
const PINK = hue('pink', 'pink');
const COOL_PINK = hue('cool pink', 'pink');
const WARM_PINK = hue('warm pink', 'pink');
const RED_BROWN = hue('red-brown', 'brown');
const BROWN = hue('brown', 'brown');
const YELLOW_BROWN = hue('yellow-brown', 'brown');
const OLIVE_BROWN = hue('olive brown', 'brown');
const OLIVE = hue('olive', 'olive');
const OLIVE_GREEN = hue('olive green', 'olive');

const coolRed = (L: number) => (L >= 58 ? COOL_PINK : COOL_RED);

const SECTORS: readonly Sector[] = [
  { below: 8, hue: coolRed },
  { below: 26, hue: (L) => (L >= 60 ? PINK : RED) },
  {
    below: 46,
    hue: (L, C) => {
      if (L >= 60 && C < 65) return WARM_PINK;
      return C >= 32 && L > 33 ? RED_ORANGE : RED_BROWN;
    },
  },
  {
    below: 63,
    hue: (L, C) => {
      if (C >= 33 && L >= 47) return ORANGE;
      return L >= 62 ? WARM_PINK : BROWN;
    },
  },
  {
    below: 75,
    hue: (L, C) => {
      if (L < 60 || (L < 70 && C < 32)) return YELLOW_BROWN;
      if (C < 34 && L >= 84) return CREAM;
      return C < 26 ? BUFF : GOLDEN;
    },
  },
  {
    below: 86,
    hue: (L, C) => {
      if (L < 58) return OLIVE_BROWN;
      if (L < 70 && C < 22) return YELLOW_BROWN;
      if (C < 30 && L >= 84) return CREAM;
      return C < 20 ? BUFF : YELLOW;
    },
  },
  {
    below: 101,
    hue: (L, C) => {
      if (L < 58) return OLIVE;
      return C < 24 && L >= 86 ? CREAM : YELLOW;
    },
  },
  {
    below: 109,
    hue: (L, C) => {
      if (L < 58) return OLIVE;
      return C >= 30 ? GREEN_YELLOW : YELLOW;
    },
  },
  { below: 139, hue: (L) => (L < 43 ? OLIVE_GREEN : YELLOW_GREEN) },
  { below: 157, hue: (_, C) => (C >= 10 ? LEAF : GREEN) },
  { below: 173, hue: () => GREEN },
  { below: 198, hue: (_, C) => (C >= 10 ? BLUE_GREEN : GREEN) },
  { below: 225, hue: (_, C) => (C >= 14 ? GREEN_BLUE : BLUE) },
  { below: 258, hue: () => BLUE },
  { below: 284, hue: (_, C) => (C >= 13 ? VIOLET_BLUE : BLUE) },
  { below: 310, hue: (_, C) => (C >= 14 ? VIOLET : PURPLE) },
  { below: 328, hue: () => PURPLE },
  { below: 337, hue: (_, C) => (C >= 14 ? RED_PURPLE : PURPLE) },
  {
    below: 345,
    hue: (L, C) => {
      if (L >= 68) return COOL_PINK;
      return C >= 14 ? RED_PURPLE : PURPLE;
    },
  },
  { below: 360, hue: coolRed },
];

/**
 * Chroma under which a colour is called grey, white or black. CIELAB stretches yellows and squeezes
 * blues: the same step from grey is 10 there and 5 here.
 */
const greyBelow = (hueDeg: number): number => 7.2 + 2.6 * Math.cos(((hueDeg - 95) * Math.PI) / 180);
const WHITE_FROM = 85.5;
const BLACK_BELOW = 22;

/** The hue in words of any colour (CIELAB, D65). */
export function hueOf(lab: Lab): Hue {
  const C = chroma(lab);
  const L = lab[0];
  const h = oklabHueDeg(oklabOfLab(lab)) ?? 0;
  const grey = greyBelow(h);
  if (L < BLACK_BELOW && C < 0.75 * grey) return hue(tinted('black', C, h), 'black');
  if (C < grey)
    return L >= WHITE_FROM
      ? hue(tinted('white', C, h), 'white')
      : hue(tinted('grey', C, h), 'grey');
  return SECTORS.find((sector) => h < sector.below)!.hue(L, C);
}

/** Chroma from which a grey shows its tint to someone who looks for it. */
const TINT_FROM = 2;

function tinted(word: string, C: number, h: number): string {
  if (C < TINT_FROM) return word;
  if (h >= 345 || h < 109) return `warm ${word}`;
  if (h < 175) return `greenish ${word}`;
  if (h < 285) return `cool ${word}`;
  return `purplish ${word}`;
}
