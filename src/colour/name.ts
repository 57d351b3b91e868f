import { type Family, hueOf } from './family.ts';
import { chroma, type Lab } from './lab.ts';

/** How light and how strong a colour is within its family, in one word; none for the middle. */
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

/** A name in its parts: "deep" and "blue-green". */
export interface NameParts {
  readonly modifier: Modifier;
  readonly word: string;
  readonly family: Family;
}

type Limits = readonly [deep: number, light: number, dull: number, bright: number];

const ANY: Limits = [0, 1000, 0, 1000];

/**
 * Where a family is called light and deep (L*), dull and bright (C*): yellow is light by nature,
 * brown dark. Our own limits.
 */
const LIMITS: Record<Family, Limits> = {
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

/** Words that say already how light and how strong; violet-blue has more C* than its neighbours. */
const OWN_LIMITS: Readonly<Record<string, Limits>> = {
  cream: ANY,
  'violet-blue': [36, 64, 24, 56],
  buff: [70, 80, 0, 1000],
};

const BLACKISH_BELOW = 16;
const BLACKISH_CHROMA = 20;
const DARK_BELOW = 45;

function modifierOf(lab: Lab, word: string, family: Family): Modifier {
  const [deep, light, dull, bright] = OWN_LIMITS[word] ?? LIMITS[family];
  const L = lab[0];
  const C = chroma(lab);
  if (family === 'grey') return L >= light ? 'light' : L < deep ? 'dark' : '';
  if (L < BLACKISH_BELOW && family !== 'black') return C < BLACKISH_CHROMA ? 'blackish' : 'deep';
  if (L < deep && C < 2 * bright) {
    if (C >= dull) return 'deep';
    // A pink or a yellow is deep at a value where nothing is dark.
    return L < DARK_BELOW ? 'dark' : 'dull';
  }
  if (C >= bright) return family === 'brown' || family === 'olive' ? 'rich' : 'bright';
  if (L >= light) return C < dull ? 'pale' : 'light';
  return C < dull ? 'dull' : '';
}

/** The parts of a colour's name. */
export function namePartsOf(lab: Lab): NameParts {
  const { word, family } = hueOf(lab);
  return { modifier: modifierOf(lab, word, family), word, family };
}

/** A short plain name for any colour (CIELAB, D65): "deep blue-green", "light warm grey". */
export function nameOf(lab: Lab): string {
  const { modifier, word } = namePartsOf(lab);
  return joined(modifier, word);
}

export const joined = (...words: readonly string[]): string =>
  words.filter((word) => word !== '').join(' ');
