import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { ILLUMINANT_A } from '../colour/observer.ts';
import { contrastRatio } from '../optics/hiding-power.ts';
import { pigmentOfPaint } from '../pigment/mixing-shelf.ts';
import {
  type Opacity,
  type PairWarning,
  type PigmentFacts,
  pairWarningOf,
  pigmentOf,
} from '../pigment/pigment-facts.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { isGlazePaint } from './glazing.ts';
import { type Amount, predictColour, shelfPaintOf } from './predict.ts';
import { paintStrengthOf } from './search/compiled-shelf.ts';

/** Properties of a mixture besides its colour, to compare mixtures by. */
export interface MixtureProperties {
  readonly pigments: number;
  /** Contrast ratio (0…1) of a brushed film of {@link BRUSHED_MM}, and the word for it. */
  readonly contrast: number;
  readonly opacity: Opacity;
  /** Pigments with a hazard above low, with handling advice. */
  readonly hazards: readonly Note[];
  /** Pigments without known facts. */
  readonly unknown: readonly string[];
  /** The least lightfast pigment of known lightfastness; null if none is known. */
  readonly weakest: {
    readonly pigment: string;
    readonly class: string;
    readonly note: string;
    /** Whether the lightfastness of every pigment is known. */
    readonly ofAll: boolean;
  } | null;
  /** Pairs with a warning about mixing them. */
  readonly pairs: readonly (PairWarning & { readonly pigments: readonly [string, string] })[];
  /** CIELAB under illuminant A, relative to its own white; no adaptation. */
  readonly lamp: Lab;
  /** CIEDE2000 from daylight to lamp-light. */
  readonly lampShift: number;
  readonly slip: MeasuringSensitivity;
  /** Pigments that hardly scatter: alone they are transparent films, not masstones. */
  readonly films: readonly string[];
}

type Hazard = Pick<PigmentFacts['hazard'], 'level' | 'sentence' | 'caution'>;
type Note = Hazard & { readonly pigment: string };

/** Sensitivity to a measuring error of 10 % in the part of the strongest pigment. */
interface MeasuringSensitivity {
  readonly pigment: string;
  /** CIEDE2000, the larger of 10 % more and 10 % less. */
  readonly deltaE00: number;
}

/**
 * Thickness of a brushed film in millimetres: what lead white needs to hide (estimate, see PER_MM).
 */
const BRUSHED_MM = 0.08;
const SLIP = 0.1;
/** Lightfastness classes (see PigmentFacts), best first. */
const LIGHTFAST = ['I', 'II', 'III', 'unlisted', 'unlisted, fugitive'];

/** Facts of a pigment that {@link mixturePropertiesOf} needs. */
export interface JudgedFacts {
  readonly hazard: Hazard;
  /** null if unknown. */
  readonly lightfast: Pick<PigmentFacts['lightfast'], 'class' | 'note'> | null;
}
type JudgedFactsOf = (pigment: string) => JudgedFacts | null;

/** Handbook facts of a pigment, for any of its lots; null if unknown. */
export const handbookFactsOf = (pigment: string): JudgedFacts | null =>
  pigmentOf(pigmentOfPaint(pigment));

/**
 * Judges a mixture by properties other than its colour.
 * @param amounts a recipe's shares or its parts, by volume
 * @param knownOf facts of a pigment; default {@link handbookFactsOf}
 * @throws RangeError as predict()
 */
export function mixturePropertiesOf(
  amounts: readonly Amount[],
  shelf: Shelf,
  knownOf: JudgedFactsOf = handbookFactsOf,
): MixtureProperties {
  const used = amounts.filter((a) => a.amount > 0);
  const lab = predictColour(used, shelf);
  const lamp = predictColour(used, shelf, ILLUMINANT_A);
  const contrast = contrastRatio({
    parts: used.map((a) => a.amount),
    paints: used.map((a) => shelfPaintOf(a.pigment, shelf)),
    filmMm: BRUSHED_MM,
  });
  const known = used.flatMap(({ pigment }) => {
    const facts = knownOf(pigment);
    return facts ? [{ pigment, facts }] : [];
  });
  const unknown = used
    .map((a) => a.pigment)
    .filter((pigment) => !known.some((one) => one.pigment === pigment));
  return {
    pigments: used.length,
    contrast,
    opacity: opacityOf(contrast),
    hazards: known
      .filter(({ facts }) => facts.hazard.level !== 'low')
      .map(({ pigment, facts: { hazard } }) => ({
        pigment,
        level: hazard.level,
        sentence: hazard.sentence,
        caution: hazard.caution,
      })),
    unknown,
    weakest: weakestOf(known, used.length),
    pairs: pairsOf(used.map((a) => a.pigment)),
    lamp,
    lampShift: deltaE00(lab, lamp),
    slip: measuringSensitivity(used, shelf),
    films: used.map((a) => a.pigment).filter((pigment) => isGlazePaint(pigment, shelf)),
  };
}

/**
 * Drift of each mixture of a harmony under lamp-light, relative to the others: CIEDE2000 between
 * its colour under illuminant A and its daylight colour moved by the mean shift of the others. 0
 * for a single mixture.
 */
export function lampDrift(colours: readonly { readonly lab: Lab; readonly lamp: Lab }[]): number[] {
  return colours.map((one) => {
    const others = colours.filter((other) => other !== one);
    if (others.length === 0) return 0;
    const axis = (i: 0 | 1 | 2) =>
      one.lab[i] + others.reduce((sum, o) => sum + o.lamp[i] - o.lab[i], 0) / others.length;
    return deltaE00([axis(0), axis(1), axis(2)], one.lamp);
  });
}

function measuringSensitivity(used: readonly Amount[], shelf: Shelf): MeasuringSensitivity {
  const strength = ({ pigment }: Amount) => paintStrengthOf(shelfPaintOf(pigment, shelf));
  const strongest = used.reduce((a, b) => (strength(b) > strength(a) ? b : a));
  const right = predictColour(used, shelf);
  const with_ = (factor: number) =>
    deltaE00(
      right,
      predictColour(
        used.map((a) => (a === strongest ? { ...a, amount: a.amount * factor } : a)),
        shelf,
      ),
    );
  return { pigment: strongest.pigment, deltaE00: Math.max(with_(1 + SLIP), with_(1 - SLIP)) };
}

function opacityOf(contrast: number): Opacity {
  if (contrast >= 0.97) return 'opaque';
  if (contrast >= 0.85) return 'semi-opaque';
  return contrast >= 0.6 ? 'semi-transparent' : 'transparent';
}

function weakestOf(known: readonly { pigment: string; facts: JudgedFacts }[], all: number) {
  const told = known.flatMap(({ pigment, facts: { lightfast } }) =>
    lightfast ? [{ pigment, class: lightfast.class, note: lightfast.note }] : [],
  );
  const rank = (one: { class: string }) => LIGHTFAST.indexOf(one.class);
  const [last] = [...told].sort((a, b) => rank(b) - rank(a));
  return last ? { ...last, ofAll: told.length === all } : null;
}

function pairsOf(pigments: readonly string[]): MixtureProperties['pairs'] {
  return pigments.flatMap((a, i) =>
    pigments.slice(i + 1).flatMap((b) => {
      const pair = pairWarningOf(pigmentOfPaint(a), pigmentOfPaint(b));
      return pair ? [{ ...pair, pigments: [a, b] as const }] : [];
    }),
  );
}
