import { deltaE00 } from '../../colour/difference.ts';
import type { Lab } from '../../colour/lab.ts';
import { fitPaints } from '../../optics/fit.ts';
import type { Paint } from '../../optics/opaque.ts';
import {
  curvePrior,
  logs,
  namedPaint,
  type PaintPrior,
  UNKNOWN_WHITE,
} from '../../optics/prior.ts';
import type { Surface } from '../../optics/surface.ts';
import type { Swatch } from '../../optics/swatch.ts';
import type { FitPaint } from '../../optics/unknowns.ts';
import { fail, ok, type Result } from '../../result.ts';
import { type Expected, expectedOf } from './expected.ts';
import type { CalibrationFault } from './fault.ts';
import { type Posterior, posteriorOf } from './posterior.ts';
import { type Painted, soleOf, tintOf, USUAL_SD } from './swatches.ts';
import { tintFaults } from './tint.ts';
import { UNNAMED } from './unnamed.ts';

/** A paint that is to be calibrated, or that stands in the piles. */
export interface PaintToFit {
  readonly pigment: string;
  readonly label: string;
  /** K and S of the pigment that the painter names, from the handbook or an earlier fit; null: nothing is known. */
  readonly named: Paint | null;
}

export interface CalibrateOptions {
  /** Called after each round of the fit; `false` stops it, and nothing is changed. */
  readonly proceed?: (round: number) => boolean;
}

/** One paint as the swatches have it. */
export interface FittedPaint {
  readonly pigment: string;
  readonly label: string;
  readonly paint: Paint;
  /** Measured where any swatch of it alone or with the white was; else photographed. */
  readonly known: 'photographed' | 'measured';
  /** Known from its masstone alone: its tints are a guess. */
  readonly rough: boolean;
  /** Of it alone or in the white. */
  readonly swatches: number;
  /** Mixtures with it, logged or brushed out. */
  readonly piles: number;
  /** How far mixtures with it may come out otherwise than foreseen. */
  readonly expected: Expected;
}

/** One swatch as the fitted paints foresee it, beside what was seen. */
export interface FittedPainted {
  readonly painted: Painted;
  readonly foreseen: Lab;
  /** CIEDE2000 between the two. */
  readonly deltaE00: number;
  /** It fits nowhere: a wrong ratio, a mixed-up place, or not opaque. */
  readonly unlikely: boolean;
}

export interface Calibration {
  readonly white: string;
  readonly surface: Surface;
  /** Every paint that stands in a swatch, in the order given. */
  readonly paints: readonly FittedPaint[];
  /** In the order given. */
  readonly swatches: readonly FittedPainted[];
  /** What the fit leaves in doubt: for suggestions. */
  readonly posterior: Posterior;
  readonly rounds: number;
}

/** Misfit in variances, over a whole swatch, beyond which a logged pile is gradually forgiven. */
const FORGIVEN = 16;
/** Squared misfit of a colour, in variances, at which a swatch is called unlikely: one in ten thousand. */
const UNLIKELY = 21;
/** Finer directions of the curves than this carry nothing that swatches show. */
const DETAIL = 1e-3;

/**
 * K and S of the painter's own paints from all that was seen of them: masstones, tints, mixtures and
 * logged piles, by colour or by spectrum, at once. First the white from its own swatches, then all
 * together with it: every tint also says something about its white. The named pigments' curves are the
 * priors (see optics/prior.ts); of others nothing is supposed but smoothness, and how smooth is
 * learnt from these very swatches, once there are as many spectra and mixtures of colours as such paints: of a few
 * priors the one that makes them most probable is taken.
 *
 * Deterministic; up to about a second for 27 paints and 60 piles.
 *
 * @param white    pigment of the studio white
 * @param paints   at least all that stand in the swatches, the white among them
 * @param swatches as they were seen with the shelf's surface (see seenAs())
 */
export function calibrate(
  white: string,
  paints: readonly PaintToFit[],
  swatches: readonly Painted[],
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

  const trialOf = (some: readonly Painted[], of: readonly PaintToFit[]) => ({
    surface,
    swatches: some.map((painted) => swatchOf(painted, of)),
  });
  const whitePrior = { prior: whitePaint.named ? namedWhite(whitePaint.named) : UNKNOWN_WHITE };
  const first =
    alone.length === 0
      ? whitePaint.named!
      : fitPaints(trialOf(alone, [whitePaint]), [whitePrior]).paints[0]!;
  if (alone.length > 0) {
    const impossible = tintFaults(swatches, white, alone[0]!.lab, (of) => labelOf(of, used))[0];
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
  const trial = trialOf(swatches, used);
  let stopped = false;
  const fitted = (given: readonly FitPaint[]) => {
    const fit = fitPaints(trial, given, {
      detail: DETAIL,
      tolerance: 1e-4,
      ...(swatches.some(({ logged }) => logged) ? { robust: FORGIVEN } : {}),
      proceed: (round) => {
        stopped = options.proceed?.(round) === false;
        return !stopped;
      },
    });
    return { fit, posterior: posteriorOf(trial, given, fit.paints, DETAIL) };
  };
  const unnamed = used.filter(({ named }, i) => named === null && i !== whiteAt).length;
  const telling = swatches.filter(({ parts, R }) => {
    const colours = parts.filter((part) => part.pigment !== white && part.parts > 0);
    return R !== null || colours.length > 1;
  }).length;
  let best: ReturnType<typeof fitted> | null = null;
  // Colours of masstones and tints say little of how S bends: spectra and mixtures choose a prior.
  for (const prior of unnamed > 0 && telling >= unnamed ? UNNAMED : UNNAMED.slice(0, 1)) {
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
      expected: expectedOf(posterior, i, whiteAt),
    })),
    swatches: fit.swatches.map(({ lab, square }, i) => ({
      painted: swatches[i]!,
      foreseen: lab,
      deltaE00: deltaE00(lab, swatches[i]!.lab),
      unlikely: square > (swatches[i]!.R ? 3 * UNLIKELY : UNLIKELY),
    })),
    posterior,
    rounds: fit.rounds,
  });
}

function swatchOf({ parts, kind, lab, R, sd }: Painted, paints: readonly PaintToFit[]): Swatch {
  const amounts = paints.map(({ pigment }) =>
    parts.reduce((sum, part) => sum + (part.pigment === pigment ? part.parts : 0), 0),
  );
  const off = sd ?? USUAL_SD[kind];
  return R === null
    ? { parts: amounts, lab: { lab, sd: off } }
    : { parts: amounts, spectrum: { R, sd: off } };
}

/**
 * A white of a named pigment: its violet edge and its scattering are much as the handbook has them, its
 * yellowness is its own. Its scattering is the scale of all paints in it.
 */
function namedWhite(named: Paint): PaintPrior {
  return {
    K: curvePrior(logs(named.K), { level: 0.7, shape: 0.3, lengthNm: 90 }),
    S: curvePrior(logs(named.S), { level: 0.02, shape: 0.1, lengthNm: 150 }),
  };
}

function countsOf(pigment: string, white: string, swatches: readonly Painted[]) {
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

/** "yellow ochre", or "yellow ochre 1, lead white 4": what a swatch is called in a sentence. */
export function labelOf(
  { parts }: Pick<Painted, 'parts'>,
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
