import { type HueFamily, namedHueOf } from './hue-family.ts';
import { chroma, type Lab } from './lab.ts';

/** Lightness and chroma of a colour within its family in one word; empty for the middle. */
export type Modifier =
  | ''
  | 'pale'
  | 'light'
  | 'bright'
  | 'rich'
  | 'dull'
  | 'dark'
  | 'deep'
  | 'blackish';

/** A colour name in parts: modifier "deep", hue word "blue-green". */
export interface NameParts {
  readonly modifier: Modifier;
  readonly word: string;
  readonly family: HueFamily;
}

type Limits = readonly [deep: number, light: number, dull: number, bright: number];

const ANY: Limits = [0, 1000, 0, 1000];

/**
 * Per family: L* below which it is deep and from which it is light, C*ab below which it is dull and
 * from which it is bright. A typical yellow is light, a typical brown dark. The limits are our own.
 */
const LIMITS: Record<HueFamily, Limits> = {
  red: [32, 52, 27, 56],
  orange: [55, 73, 45, 78],
  yellow: [70, 79, 36, 75],
  green: [38, 66, 16, 48],
  blue: [36, 64, 15, 42],
  violet: [34, 60, 26, 56],
  purple: [34, 60, 19, 48],
  pink: [64, 80, 17, 42],
  brown: [28, 50, 15, 48],
  olive: [30, 50, 15, 48],
  grey: [40, 66, 0, 1000],
  black: ANY,
  white: ANY,
};

/**
 * Limits for single hue words. "Cream" and "buff" already imply lightness and chroma; violet-blues
 * have a larger C*ab than their neighbours.
 */
const OWN_LIMITS: Readonly<Record<string, Limits>> = {
  cream: ANY,
  'violet-blue': [36, 64, 24, 56],
  buff: [70, 80, 0, 1000],
};

/** Below this L* (and {@link BLACKISH_CHROMA}, C*ab) a colour is called blackish. */
const BLACKISH_BELOW = 16;
const BLACKISH_CHROMA = 20;
/** Below this L* a dull colour that is deep for its family is called dark. */
const DARK_BELOW = 45;

function modifierOf(lab: Lab, word: string, family: HueFamily): Modifier {
  const [deep, light, dull, bright] = OWN_LIMITS[word] ?? LIMITS[family];
  const L = lab[0];
  const C = chroma(lab);
  if (family === 'grey') return L >= light ? 'light' : L < deep ? 'dark' : '';
  if (L < BLACKISH_BELOW && family !== 'black') return C < BLACKISH_CHROMA ? 'blackish' : 'deep';
  if (L < deep && C < 2 * bright) {
    if (C >= dull) return 'deep';
    // Pinks and yellows are deep for their family at lightnesses that are not dark.
    return L < DARK_BELOW ? 'dark' : 'dull';
  }
  if (C >= bright) return family === 'brown' || family === 'olive' ? 'rich' : 'bright';
  if (L >= light) return C < dull ? 'pale' : 'light';
  return C < dull ? 'dull' : '';
}

/** The parts of a colour's name (CIELAB, D65). @throws RangeError when a number is not finite */
export function namePartsOf(lab: Lab): NameParts {
  const { word, family } = namedHueOf(lab);
  return { modifier: modifierOf(lab, word, family), word, family };
}

/**
 * A short English name for any colour (CIELAB, D65): "deep blue-green", "light warm grey".
 * @throws RangeError when a number is not finite
 */
export function nameOf(lab: Lab): string {
  const { modifier, word } = namePartsOf(lab);
  return phraseOf(modifier, word);
}

/** The words that are not empty, separated by spaces. */
export const phraseOf = (...words: readonly string[]): string =>
  words.filter((word) => word !== '').join(' ');
