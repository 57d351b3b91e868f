import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import {
  curvePrior,
  logCurve,
  namedPaint,
  type PaintPrior,
  UNKNOWN_WHITE,
} from '../optics/curve-prior.ts';
import { fitPaints } from '../optics/fit-paints.ts';
import type { FitPaint } from '../optics/fit-unknowns.ts';
import type { Paint } from '../optics/opaque.ts';
import type { Surface } from '../optics/surface.ts';
import type { Swatch } from '../optics/swatch-residuals.ts';
import type { ErrorQuantiles } from '../pigment/stock.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import { expectedErrorOf } from './expected-error.ts';
import { type Posterior, posteriorOf } from './fit-posterior.ts';
import { type PaintedSwatch, soleOf, tintOf, USUAL_SD } from './painted-swatch.ts';
import { inconsistentTints } from './tint-consistency.ts';
import { UNKNOWN_PIGMENT_PRIORS } from './unknown-pigment-priors.ts';

/** A paint to be calibrated, or one that occurs in the swatches. */
export interface PaintToFit {
  readonly pigment: string;
  readonly label: string;
  /** K and S of the pigment by name, the mean of its prior; null if the pigment is unknown. */
  readonly named: Paint | null;
}

interface CalibrateOptions {
  /** Called after each round of the fit; returning `false` aborts with the fault `stopped`. */
  readonly proceed?: (round: number) => boolean;
}

/** One fitted paint. */
export interface FittedPaint {
  readonly pigment: string;
  readonly label: string;
  readonly paint: Paint;
  /** `measured` if any swatch of it alone or in the white was measured, else `photographed`. */
  readonly known: 'photographed' | 'measured';
  /** Fitted to its masstone alone: its tints are a guess. */
  readonly rough: boolean;
  /** Number of swatches of it alone or in the white. */
  readonly swatches: number;
  /** Number of other mixtures with it, logged or painted. */
  readonly piles: number;
  /** Expected error of mixtures with it. */
  readonly expected: ErrorQuantiles;
}

/** One swatch with the colour that the fitted paints predict (CIELAB, D65). */
export interface FittedPainted {
  readonly painted: PaintedSwatch;
  readonly foreseen: Lab;
  /** CIEDE2000 between prediction and observation. */
  readonly deltaE00: number;
  /** Outlier: a wrong ratio, a swapped place, or paint that is not opaque. */
  readonly unlikely: boolean;
}

/** Result of {@link calibratePaints}. */
export interface Calibration {
  readonly white: string;
  readonly surface: Surface;
  /** The white and every paint that occurs in a swatch, in the order of the input. */
  readonly paints: readonly FittedPaint[];
  /** In the order of the input. */
  readonly swatches: readonly FittedPainted[];
  /** Remaining uncertainty, for suggest(). */
  readonly posterior: Posterior;
  readonly rounds: number;
}

/** Constant of the robust cost with logged piles: squared misfit per swatch, in variances. */
const ROBUST_CONSTANT = 16;
/** Squared misfit of a colour, in variances (3 degrees of freedom), of an outlier: p = 1e-4. */
const OUTLIER_SQUARE = 21;
/** See FitOptions.detail: swatches do not determine finer directions of the curves. */
const FIT_DETAIL = 1e-3;

/**
 * Fits K and S of the painter's own paints jointly to all swatches: masstones, tints, mixtures and
 * logged piles, as colours or spectra. The white is fitted to its own swatches first, then again
 * with all others, because every tint also depends on the white. Curves of known pigments are the
 * prior means (see namedPaint()). For unknown pigments the prior only assumes smoothness; its
 * smoothness is chosen by evidence among a few candidates, provided there are at least as many
 * spectra and mixtures as such paints.
 *
 * Deterministic; up to about a second for 27 paints and 60 piles.
 *
 * @param white    pigment of the studio's white
 * @param paints   at least all paints of the swatches, including the white
 * @param swatches as seen with the surface (see seenAs())
 */
export function calibratePaints(
  white: string,
  paints: readonly PaintToFit[],
  swatches: readonly PaintedSwatch[],
  surface: Surface,
  options: CalibrateOptions = {},
): Result<Calibration, CalibrationFault> {
  if (swatches.length === 0) return fail({ code: 'swatch-nothing' });
  const stray = swatches
    .flatMap(({ parts }) => parts)
    .find(({ pigment }) => !paints.some((paint) => paint.pigment === pigment));
  if (stray) return fail({ code: 'swatch-paint-unknown', pigment: stray.pigment });
  const used = paints.filter(
    ({ pigment }) =>
      pigment === white ||
      swatches.some(({ parts }) => parts.some((p) => p.pigment === pigment && p.parts > 0)),
  );
  const whiteAt = used.findIndex(({ pigment }) => pigment === white);
  const alone = swatches.filter((swatch) => soleOf(swatch) === white);
  const whitePaint = used[whiteAt];
  if (!whitePaint || (alone.length === 0 && whitePaint.named === null))
    return fail({ code: 'swatch-white-missing', label: whitePaint?.label ?? white });

  const observationsOf = (some: readonly PaintedSwatch[], of: readonly PaintToFit[]) => ({
    surface,
    swatches: some.map((painted) => swatchOf(painted, of)),
  });
  const whitePrior = { prior: whitePaint.named ? namedWhite(whitePaint.named) : UNKNOWN_WHITE };
  const first =
    alone.length === 0
      ? whitePaint.named!
      : fitPaints(observationsOf(alone, [whitePaint]), [whitePrior]).paints[0]!;
  if (alone.length > 0) {
    const impossible = inconsistentTints(swatches, white, alone[0]!.lab, (of) =>
      swatchLabelOf(of, used),
    )[0];
    if (impossible) return fail(impossible);
  }

  const named = used.map((paint) => (paint.named ? namedPaint(paint.named) : null));
  const givenBy = (unnamed: PaintPrior, from: readonly Paint[] | undefined) =>
    used.map((_, i): FitPaint => {
      if (i === whiteAt && alone.length === 0) return { known: first };
      const start = from?.[i] ?? (i === whiteAt ? first : undefined);
      const prior = i === whiteAt ? whitePrior.prior : (named[i] ?? unnamed);
      return start ? { prior, start } : { prior };
    });
  const observations = observationsOf(swatches, used);
  let stopped = false;
  const fitted = (given: readonly FitPaint[]) => {
    const fit = fitPaints(observations, given, {
      detail: FIT_DETAIL,
      tolerance: 1e-4,
      ...(swatches.some(({ logged }) => logged) ? { robust: ROBUST_CONSTANT } : {}),
      proceed: (round) => {
        stopped = options.proceed?.(round) === false;
        return !stopped;
      },
    });
    return { fit, posterior: posteriorOf(observations, given, fit.paints, FIT_DETAIL) };
  };
  const unnamed = used.filter(({ named }, i) => named === null && i !== whiteAt).length;
  const telling = swatches.filter(({ parts, R }) => {
    const colours = parts.filter((part) => part.pigment !== white && part.parts > 0);
    return R !== null || colours.length > 1;
  }).length;
  let best: ReturnType<typeof fitted> | null = null;
  // Colours of masstones and tints hardly determine the shape of S; spectra and mixtures do.
  for (const prior of unnamed > 0 && telling >= unnamed
    ? UNKNOWN_PIGMENT_PRIORS
    : UNKNOWN_PIGMENT_PRIORS.slice(0, 1)) {
    const next = fitted(givenBy(prior, best?.fit.paints));
    if (stopped) return fail({ code: 'stopped' });
    if (best === null || next.posterior.surprise < best.posterior.surprise) best = next;
  }
  const { fit, posterior } = best!;
  return ok({
    white,
    surface,
    paints: used.map(({ pigment, label }, i) => ({
      pigment,
      label,
      paint: fit.paints[i]!,
      ...countsOf(pigment, white, swatches),
      expected: expectedErrorOf(posterior, i, whiteAt),
    })),
    swatches: fit.swatches.map(({ lab, square }, i) => ({
      painted: swatches[i]!,
      foreseen: lab,
      deltaE00: deltaE00(lab, swatches[i]!.lab),
      unlikely: square > (swatches[i]!.R ? 3 * OUTLIER_SQUARE : OUTLIER_SQUARE),
    })),
    posterior,
    rounds: fit.rounds,
  });
}

function swatchOf(
  { parts, kind, lab, R, sd }: PaintedSwatch,
  paints: readonly PaintToFit[],
): Swatch {
  const amounts = paints.map(({ pigment }) =>
    parts.reduce((sum, part) => sum + (part.pigment === pigment ? part.parts : 0), 0),
  );
  const off = sd ?? USUAL_SD[kind];
  return R === null
    ? { parts: amounts, lab: { lab, sd: off } }
    : { parts: amounts, spectrum: { R, sd: off } };
}

/**
 * Prior of a white of a known pigment: violet edge and scattering near the built-in curve,
 * yellowness free. Its scattering sets the scale of all paints mixed with it.
 */
function namedWhite(named: Paint): PaintPrior {
  return {
    K: curvePrior(logCurve(named.K), { level: 0.7, shape: 0.3, lengthNm: 90 }),
    S: curvePrior(logCurve(named.S), { level: 0.02, shape: 0.1, lengthNm: 150 }),
  };
}

/** Evidence for one paint: its provenance and its numbers of swatches and piles. */
function countsOf(pigment: string, white: string, swatches: readonly PaintedSwatch[]) {
  const of = swatches.filter(({ parts }) =>
    parts.some((part) => part.pigment === pigment && part.parts > 0),
  );
  const own = of.filter(
    (each) =>
      !each.logged &&
      (soleOf(each) === pigment || (pigment !== white && tintOf(each, white) !== null)),
  );
  const piles =
    pigment === white ? of.filter((each) => each.logged) : of.filter((each) => !own.includes(each));
  const mixed = of.some((each) => soleOf(each) !== pigment);
  return {
    known: own.some(({ kind }) => kind === 'measured')
      ? ('measured' as const)
      : ('photographed' as const),
    rough: pigment !== white && !mixed,
    swatches: own.length,
    piles: piles.length,
  };
}

/** Name of a swatch within a sentence: "yellow ochre", or "yellow ochre 1, lead white 4". */
export function swatchLabelOf(
  { parts }: Pick<PaintedSwatch, 'parts'>,
  paints: readonly Pick<PaintToFit, 'pigment' | 'label'>[],
): string {
  const used = parts.filter((part) => part.parts > 0);
  const name = (pigment: string) =>
    paints.find((paint) => paint.pigment === pigment)?.label ?? pigment;
  if (used.length === 1) return name(used[0]!.pigment);
  return used
    .map((part) => `${name(part.pigment)} ${Number(part.parts.toPrecision(3))}`)
    .join(', ');
}
