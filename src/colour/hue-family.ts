import { temperatureOf } from './appearance.ts';
import { chroma, type Lab } from './lab.ts';
import { oklabHueDeg, oklabOfLab } from './oklab.ts';

/** The basic colour terms that hue words and modifiers refine. */
export type HueFamily =
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

/** A hue word and its family. */
interface NamedHue {
  readonly word: string;
  readonly family: HueFamily;
}

/**
 * The words of one range of OKLab hue (up to `below` degrees), depending on L* and C*ab. The limits
 * are our own, placed where the Munsell hues change their common names; a check compares them with
 * the ISCC-NBS names.
 */
interface Sector {
  readonly below: number;
  readonly hue: (L: number, C: number, hDeg: number) => NamedHue;
}

const hue = (word: string, family: HueFamily): NamedHue => ({ word, family });
const RED = hue('red', 'red');
const COOL_RED = hue('cool red', 'red');
const WARM_RED = hue('warm red', 'red');
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

/** A red mixed with white becomes pink; with more chroma, at a lower L*. */
const isPink = (L: number, C: number) => L >= (C >= 25 ? 56 : 61);

const coolRed = (L: number, C: number) => (isPink(L, C) ? COOL_PINK : COOL_RED);

/** A darkened orange becomes brown; with less chroma, at a higher L*. */
const isOrange = (L: number, C: number) => L >= 47 && C >= 33 + 1.2 * Math.max(0, 62 - L);

const SECTORS: readonly Sector[] = [
  { below: 7, hue: coolRed },
  { below: 26, hue: (L, C) => (isPink(L, C) ? PINK : RED) },
  {
    below: 34,
    hue: (L, C) => {
      if (L >= 60) return C < 65 ? WARM_PINK : RED_ORANGE;
      return C >= 44 ? WARM_RED : RED_BROWN;
    },
  },
  {
    below: 46,
    hue: (L, C) => {
      if (L >= 61 && C < 65) return WARM_PINK;
      return C >= 44 + 1.2 * Math.max(0, 52 - L) ? RED_ORANGE : RED_BROWN;
    },
  },
  {
    below: 63,
    hue: (L, C) => {
      if (isOrange(L, C)) return ORANGE;
      return L >= 67 ? WARM_PINK : BROWN;
    },
  },
  {
    below: 78,
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
    below: 100,
    hue: (L, C) => {
      if (L < 58) return OLIVE;
      return C < 24 && L >= 86 ? CREAM : YELLOW;
    },
  },
  {
    below: 111,
    hue: (L, C, h) => {
      if (L < 58) return OLIVE;
      if (C >= 30) return GREEN_YELLOW;
      return h < 104 ? YELLOW : YELLOW_GREEN;
    },
  },
  { below: 139, hue: (L) => (L < 43 ? OLIVE_GREEN : YELLOW_GREEN) },
  { below: 160, hue: (_, C) => (C >= 10 ? LEAF : GREEN) },
  { below: 173, hue: () => GREEN },
  { below: 198, hue: (_, C) => (C >= 10 ? BLUE_GREEN : GREEN) },
  { below: 227, hue: (_, C) => (C >= 14 ? GREEN_BLUE : BLUE) },
  { below: 258, hue: () => BLUE },
  { below: 285, hue: (_, C) => (C >= 13 ? VIOLET_BLUE : BLUE) },
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
 * C*ab below which a colour is called grey, white or black. CIELAB stretches yellows and compresses
 * blues: an equal visual step from grey is C* 10 in yellow and C* 5 in blue. In whites, blacks and
 * dark umbers a tint shows at a lower chroma.
 */
function greyBelow(L: number, hDeg: number): number {
  const from = (pole: number) => Math.cos(((hDeg - pole) * Math.PI) / 180);
  const grey = 7.4 + 2.6 * from(95);
  if (L < BLACK_BELOW || L >= WHITE_FROM) return 0.85 * grey;
  return grey * (1 - 0.35 * Math.max(0, 1 - L / 50) * Math.max(0, from(60)));
}

const WHITE_FROM = 85.5;
const BLACK_BELOW = 23.5;

/**
 * Hue word and family of any colour (CIELAB, D65).
 * @throws RangeError when a number is not finite
 */
export function namedHueOf(lab: Lab): NamedHue {
  if (!lab.every(Number.isFinite)) throw new RangeError('a colour is three finite numbers');
  const C = chroma(lab);
  const L = lab[0];
  const h = oklabHueDeg(oklabOfLab(lab)) ?? 0;
  if (C >= greyBelow(L, h)) return SECTORS.find((sector) => h < sector.below)!.hue(L, C, h);
  const tint = tintOf(lab, C, h);
  const of = (word: 'white' | 'grey' | 'black') => hue(tint ? `${tint} ${word}` : word, word);
  if (L >= WHITE_FROM) return of('white');
  return of(L < BLACK_BELOW ? 'black' : 'grey');
}

/** C*ab from which a grey gets a word for its tint. */
const TINT_FROM = 2;
/** C*ab from which that word is "greenish" or "purplish" where it fits, instead of warm or cool. */
const TINT_NAMED_FROM = 3;

function tintOf(lab: Lab, C: number, h: number): string {
  if (C < TINT_FROM) return '';
  if (C >= TINT_NAMED_FROM && h >= 109 && h < 180) return 'greenish';
  if (C >= TINT_NAMED_FROM && h >= 285 && h < 345) return 'purplish';
  const temperature = temperatureOf(lab);
  return temperature === 'neutral' ? '' : temperature;
}
