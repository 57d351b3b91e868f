import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { A } from '../colour/observer.ts';
import { contrastRatio } from '../optics/opacity.ts';
import { type Opacity, type Pair, type PigmentFacts, pairOf, pigmentOf } from '../pigment/facts.ts';
import { baseOf } from '../pigment/mixable.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { isFilm } from './film.ts';
import { type Amount, paintOf, predict } from './predict.ts';
import { strengthOf } from './stock.ts';

/** What a painter weighs one mixture against another by, beside its colour. */
export interface Judgement {
  readonly pigments: number;
  /** Contrast ratio of a brushed film of {@link BRUSHED_MM}, 0…1, and what that is called. */
  readonly contrast: number;
  readonly opacity: Opacity;
  /** Pigments that are more than a dust, with what to mind. */
  readonly hazards: readonly Note[];
  /** Pigments of whose danger nothing is known. */
  readonly unknown: readonly string[];
  /** The least lightfast pigment that anything is known of; null where nothing is. */
  readonly weakest: {
    readonly pigment: string;
    readonly class: string;
    readonly note: string;
    /** Whether something is known of every pigment. */
    readonly ofAll: boolean;
  } | null;
  /** Pairs that call for care in one pile, with their sentences. */
  readonly pairs: readonly (Pair & { readonly pigments: readonly [string, string] })[];
  /** Under lamp-light, against the lamp's own white; no adaptation. */
  readonly lamp: Lab;
  /** CIEDE2000 from daylight to lamp-light. */
  readonly lampShift: number;
  readonly slip: Slip;
  /** Pigments that scatter next to nothing: alone they are films, not masstones. */
  readonly films: readonly string[];
}

type Hazard = Pick<PigmentFacts['hazard'], 'level' | 'sentence' | 'caution'>;
type Note = Hazard & { readonly pigment: string };

/** What measuring the strongest part 10 % wrong does. */
export interface Slip {
  readonly pigment: string;
  /** CIEDE2000, the worse of a tenth more and a tenth less. */
  readonly deltaE00: number;
}

/** A brushed film, in millimetres: what lead white needs to hide (see the estimate of PER_MM). */
export const BRUSHED_MM = 0.08;
const SLIP = 0.1;
const LIGHTFAST = ['I', 'II', 'III', 'unlisted', 'unlisted, fugitive'];

/** What a judgement asks of a pigment. */
export interface Known {
  readonly hazard: Hazard;
  /** null where nobody knows. */
  readonly lightfast: Pick<PigmentFacts['lightfast'], 'class' | 'note'> | null;
}
export type KnownOf = (pigment: string) => Known | null;

/** What the handbooks hold of a pigment of ours, whatever its lot. */
export const handbookOf = (pigment: string): Known | null => pigmentOf(baseOf(pigment));

/**
 * @param amounts a recipe's shares or its parts, by volume
 * @param knownOf what is known of a pigment; {@link handbookOf} where not given
 * @throws RangeError as predict()
 */
export function judge(
  amounts: readonly Amount[],
  shelf: Shelf,
  knownOf: KnownOf = handbookOf,
): Judgement {
  const used = amounts.filter((a) => a.amount > 0);
  const lab = predict(used, shelf);
  const lamp = predict(used, shelf, A);
  const contrast = contrastRatio({
    parts: used.map((a) => a.amount),
    paints: used.map((a) => paintOf(a.pigment, shelf)),
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
    slip: slipOf(used, shelf),
    films: used.map((a) => a.pigment).filter((pigment) => isFilm(pigment, shelf)),
  };
}

/**
 * How far each of a harmony's mixtures leaves its neighbours by lamp-light: the CIEDE2000 between
 * its colour there and where it would be had it moved as the others do on average. 0 for one alone.
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

function slipOf(used: readonly Amount[], shelf: Shelf): Slip {
  const strength = ({ pigment }: Amount) => strengthOf(paintOf(pigment, shelf));
  const strongest = used.reduce((a, b) => (strength(b) > strength(a) ? b : a));
  const right = predict(used, shelf);
  const with_ = (factor: number) =>
    deltaE00(
      right,
      predict(
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

function weakestOf(known: readonly { pigment: string; facts: Known }[], all: number) {
  const told = known.flatMap(({ pigment, facts: { lightfast } }) =>
    lightfast ? [{ pigment, class: lightfast.class, note: lightfast.note }] : [],
  );
  const rank = (one: { class: string }) => LIGHTFAST.indexOf(one.class);
  const [last] = [...told].sort((a, b) => rank(b) - rank(a));
  return last ? { ...last, ofAll: told.length === all } : null;
}

function pairsOf(pigments: readonly string[]): Judgement['pairs'] {
  return pigments.flatMap((a, i) =>
    pigments.slice(i + 1).flatMap((b) => {
      const pair = pairOf(baseOf(a), baseOf(b));
      return pair ? [{ ...pair, pigments: [a, b] as const }] : [];
    }),
  );
}
