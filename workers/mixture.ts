import type { Lab } from '../src/colour/lab.ts';
import { type Fewest, type FewestOptions, fewest } from '../src/harmony/fewest-pigments.ts';
import { type MixedVariant, type Origin, variantsOf } from '../src/harmony/mixed-variant.ts';
import { type Transposition, transpose } from '../src/harmony/transpose.ts';
import type { VariantAmount, VariantWay } from '../src/harmony/variant-target.ts';
import type { ExistingPile } from '../src/mixture/addition-search.ts';
import type { Constraints } from '../src/mixture/constraints.ts';
import {
  type AddFault,
  type AddOptions,
  correctPile,
  type PileCorrection,
} from '../src/mixture/correct-pile.ts';
import { findMixtures } from '../src/mixture/find-mixtures.ts';
import type { MixOptions } from '../src/mixture/mixture-finder.ts';
import type { MixtureAnswer } from '../src/mixture/mixture-types.ts';
import type { MixFault, MixtureSearchOptions } from '../src/mixture/search-options.ts';
import { type MissingPigment, missingPigmentsFor } from '../src/mixture/shortfall.ts';
import type { Shelf } from '../src/pigment/shelf.ts';
import { wholeShelf } from '../src/pigment/starter-shelf.ts';
import { ok, type Result } from '../src/result.ts';
import type { JobResult } from './job-protocol.ts';

/** Options that a message can carry: functions removed. */
type Sent<Options> = Omit<Options, 'onProgress' | 'stopped'>;

/** Kinds of work done in the worker: input (`takes`) and result (`gives`). */
export interface MixtureWork {
  /** Mixtures for every target. */
  readonly mix: {
    readonly takes: { readonly targets: readonly Lab[]; readonly options: Sent<MixOptions> };
    readonly gives: Result<MixtureAnswer[], MixFault>;
  };
  /** Pigments not on the shelf that would bring a target nearer. */
  readonly lacks: {
    readonly takes: {
      readonly target: Lab;
      readonly options: { readonly most: number; readonly constraints: Constraints };
    };
    readonly gives: Result<MissingPigment[], MixFault>;
  };
  readonly fewest: {
    readonly takes: { readonly colours: readonly Lab[]; readonly options: Sent<FewestOptions> };
    readonly gives: Result<Fewest, MixFault>;
  };
  readonly transpose: {
    readonly takes: {
      readonly colours: readonly Lab[];
      readonly options: Sent<MixtureSearchOptions>;
    };
    readonly gives: Result<Transposition, MixFault>;
  };
  /** Variants of colours that have a mixture. */
  readonly vary: {
    readonly takes: {
      readonly origins: readonly Origin[];
      readonly asks: readonly { readonly way: VariantWay; readonly amount: VariantAmount }[];
      readonly options: Pick<MixtureSearchOptions, 'most' | 'constraints'>;
    };
    readonly gives: Result<MixedVariant[], MixFault>;
  };
  /** Additions to a pile that came out wrong. */
  readonly add: {
    readonly takes: {
      readonly batch: ExistingPile;
      readonly cameOut: Lab;
      readonly target: Lab;
      readonly options: AddOptions;
    };
    readonly gives: Result<PileCorrection, AddFault>;
  };
}
export type MixtureKind = keyof MixtureWork;
/** One message: a kind of work on one shelf. */
export type MixtureJob = {
  [K in MixtureKind]: { readonly kind: K; readonly shelf: Shelf } & MixtureWork[K]['takes'];
}[MixtureKind];
/** Progress, 0…1. */
export type MixtureNews = number;
export type MixtureResult = MixtureWork[MixtureKind]['gives'];

/** Pigments searched between two progress messages. */
const AT_ONCE = 4;

/** Executes one job and posts its progress. */
export function executeMixtureJob(
  job: MixtureJob,
  tell: (done: MixtureNews) => void,
): JobResult<MixtureResult> {
  const { shelf } = job;
  switch (job.kind) {
    case 'mix':
      return { value: findMixtures(job.targets, shelf, { ...job.options, onProgress: tell }) };
    case 'lacks':
      return { value: lacks(job.target, shelf, job.options, tell) };
    case 'fewest':
      return { value: fewest(job.colours, shelf, { ...job.options, onProgress: tell }) };
    case 'transpose':
      return { value: transpose(job.colours, shelf, { ...job.options, onProgress: tell }) };
    case 'vary':
      return {
        value: variantsOf(job.origins, job.asks, shelf, { ...job.options, onProgress: tell }),
      };
    case 'add':
      return { value: correctPile(job.batch, job.cameOut, job.target, shelf, job.options) };
  }
}

function lacks(
  target: Lab,
  shelf: Shelf,
  options: MixtureWork['lacks']['takes']['options'],
  tell: (done: number) => void,
): Result<MissingPigment[], MixFault> {
  const further = wholeShelf().paints;
  const found: MissingPigment[] = [];
  for (let i = 0; i < further.length; i += AT_ONCE) {
    const some = missingPigmentsFor(target, shelf, further.slice(i, i + AT_ONCE), options);
    if (!some.ok) return some;
    found.push(...some.value);
    tell(Math.min(1, (i + AT_ONCE) / further.length));
  }
  return ok(found.sort((a, b) => a.deltaE00 - b.deltaE00));
}
