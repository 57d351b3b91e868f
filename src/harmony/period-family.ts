import { chroma, hueDeg, type Lab } from '../colour/lab.ts';

/** Colour families of period practice, coarser than colour names. */
type PeriodFamily =
  | 'white'
  | 'black'
  | 'grey'
  | 'brown'
  | 'pink'
  | 'red'
  | 'orange'
  | 'yellow'
  | 'green'
  | 'blue'
  | 'purple';

/**
 * The painter's declaration for a cloth, whatever its numbers: white cloth in shadow is white
 * cloth.
 */
export type Declared = 'white' | 'black';

/** Properties that period practice distinguished. */
export interface PeriodKind {
  readonly family: PeriodFamily;
  readonly earthRed: boolean;
  readonly earthYellow: boolean;
  readonly pale: boolean;
  readonly greyViolet: boolean;
  /** Light and dark, as said of draperies: our own limits, L* 65 and 40. */
  readonly light: boolean;
  readonly dark: boolean;
}

const LIGHT_FROM = 65;
const DARK_TO = 40;

/**
 * The family of a colour by hue band (CIELAB, D65), tested in the handbook's order: white, black,
 * grey, brown, pink, then by hue. An engineering convention, not a measurement.
 * @param declared overrides the family
 */
export function kindOf(lab: Lab, declared: Declared | null = null): PeriodKind {
  const L = lab[0];
  const C = chroma(lab);
  const h = hueDeg(lab) ?? 0;
  const family = declared ?? familyOf(L, C, h);
  const warm = family === 'red' || family === 'orange';
  const golden = family === 'yellow' || family === 'orange';
  return {
    family,
    earthRed: warm && L >= 25 && L <= 55 && C < 50,
    earthYellow: golden && L >= 40 && L <= 75 && C < 60,
    pale: L > 70 && C < 30,
    greyViolet: (family === 'purple' || family === 'blue') && h >= 280 && h <= 345 && C < 20,
    light: L >= LIGHT_FROM,
    dark: L <= DARK_TO,
  };
}

function familyOf(L: number, C: number, h: number): PeriodFamily {
  if (L > 80 && C < 14) return 'white';
  if (L < 25 && C < 8) return 'black';
  if (C < 6) return 'grey';
  if (h >= 35 && h <= 85 && L < 50 && C <= 40) return 'brown';
  if ((h >= 330 || h <= 50) && L > 62 && C < 45) return 'pink';
  if (h >= 345 || h < 42) return 'red';
  if (h < 68) return 'orange';
  if (h < 105) return 'yellow';
  if (h < 190) return 'green';
  return h < 300 ? 'blue' : 'purple';
}
