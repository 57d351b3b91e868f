import { existsSync, realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { deltaE00 } from '../colour/difference.ts';
import {
  crossValidationFolds,
  deltaEab,
  fitCrossValidated,
  type MeasuredWashMixture,
  predictWashes,
  type WashPrediction,
} from '../optics/wash-validation.ts';
import { fitWashes, type Washes, type WashOptions } from '../optics/watercolour-wash.ts';
import { FileFault, readMixtures, readWashes } from './watercolour-data.ts';

const HELP = `How well films over paper foresee measured mixtures of watercolours.

  npm run -s report:watercolours -- [--fit FILE]... [--score FILE]... [options]

Without files: cross-validation over whole pigment pairs of the reference data.
  --fit FILE      fit to the washes and these mixtures; may be given several times
  --score FILE    score on these mixtures, fitted to the washes and the files of --fit
                  (without --fit: the reference mixtures); without --score: cross-validation of --fit
  --washes FILE   washes of single pigments and the bare paper
  --folds N       folds of the cross-validation, 5
  --seed N        decides how pairs are dealt into folds, 1
  --help          this text

Mixtures:  pigment_a, amount_a_ml, pigment_b, amount_b_ml, 400, 410 ... 730 (reflectances 0 to 1).
Washes:    pigment, amount_ml, quantity, 400 ... 730; rows of quantity R; one row is Paper.
`;

/** Beside the project, never in it: the measured data are not ours to give away. */
const REFERENCE = resolve(import.meta.dirname, '../../../shared/reference');
const LIMIT = 5;

/** What the report says; numbers beside its text, for tests. */
interface Report {
  readonly text: string;
  /** Share of mixtures within dE*ab 5. */
  readonly within: number;
  /** The same, from single washes alone. */
  readonly alone: number;
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const within = (all: readonly WashPrediction[]): number =>
  all.filter((each) => deltaEab(each) <= LIMIT).length / all.length;

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
}

/** Share, median and the difference that one in ten exceeds. */
function lines(all: readonly WashPrediction[]): string {
  const at = (sorted: Float64Array, share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(2);
  const ab = Float64Array.from(all, deltaEab).sort();
  const e00 = Float64Array.from(all, (each) => deltaE00(each.foreseen, each.measured)).sort();
  return `  within dE*ab ${LIMIT}: ${percent(within(all))} of ${all.length} mixtures
  dE*ab      median ${at(ab, 0.5)}, one in ten over ${at(ab, 0.9)}
  CIEDE2000  median ${at(e00, 0.5)}, one in ten over ${at(e00, 0.9)}`;
}

const settled = ({ exponents, surface, fibre }: Washes): string =>
  `  found: k1 ${surface.k1.toFixed(3)}, k2 ${surface.k2.toFixed(2)}, fibre ${fibre.toFixed(2)}, exponents ${Math.min(...exponents).toFixed(2)} to ${Math.max(...exponents).toFixed(2)}`;

const told = (options: readonly WashOptions[]): string =>
  `  chosen within the fit: a single wash counts ${options.map(({ singles }) => singles).join(', ')} mixtures`;

/** Pairs hang together: the spread of a share is that of whole pairs, not of mixtures. */
function spreadOverPairs(all: readonly WashPrediction[]): string {
  const pairs = [...new Set(all.map(({ pair }) => pair))];
  if (pairs.length < 2) return '  one pair only: no spread can be told';
  const shares = pairs.map((pair) => within(all.filter((each) => each.pair === pair)));
  const error = deviation(shares) / Math.sqrt(pairs.length);
  return `  spread: standard error ${percent(error)} over ${pairs.length} pairs`;
}

interface Request {
  readonly washes: string;
  readonly fit: readonly string[];
  readonly score: readonly string[];
  readonly folds: number;
  readonly seed: number;
}

/**
 * @param progress told what is being done, a few words at a time
 * @throws FileFault for a file that cannot be read
 */
export function report(request: Request, progress: (doing: string) => void = () => {}): Report {
  const data = readWashes(request.washes);
  const read = (files: readonly string[]) =>
    files.flatMap((file) => readMixtures(file, data.pigments));
  const mixtures = read(request.fit);
  const pairs = new Set(mixtures.map(({ pair }) => pair));
  progress('single washes');
  const alone = fitWashes(data.pigments.length, data.paper, data.singles);

  const scored = read(request.score);
  const head = [
    'Watercolours on paper: two-flux films (Kubelka and Munk), K and S by the joint fit.',
    `Washes: ${data.singles.length} of ${data.pigments.length} pigments. Mixtures to fit: ${mixtures.length} of ${pairs.size} pairs.`,
  ];
  const foot = [
    'Not chosen within: the widths of the priors, set once with the reference mixtures in view (a dozen variants lay within two points).',
    'For comparison: a deep network of 2019 is published with 83 % within 5 on a split of these data.',
  ];
  const done = (
    body: string[],
    all: readonly WashPrediction[],
    judged: readonly MeasuredWashMixture[],
  ): Report => {
    const single = predictWashes(judged, alone);
    const more = ['', 'From single washes alone, no mixture seen:', lines(single), settled(alone)];
    const text = [...head, '', ...body, ...more, '', ...foot].join('\n');
    return { text, within: within(all), alone: within(single) };
  };

  if (scored.length > 0) {
    progress('mixtures');
    const { washes, options } = fitCrossValidated(data, mixtures, alone);
    const all = predictWashes(scored, washes);
    const known = new Set(scored.filter(({ pair }) => pairs.has(pair)).map(({ pair }) => pair));
    const unseen = new Set(all.map(({ pair }) => pair)).size - known.size;
    return done(
      [
        `Fitted to washes and mixtures, scored on others (${unseen} pairs unseen, ${known.size} seen in the fit):`,
        lines(all),
        spreadOverPairs(all),
        settled(washes),
        told([options]),
      ],
      all,
      scored,
    );
  }

  if (pairs.size < request.folds)
    throw new FileFault(
      `${request.folds} folds need as many pigment pairs, and there are ${pairs.size}.`,
    );
  const folds = crossValidationFolds(mixtures, request.folds, request.seed);
  const chosen: WashOptions[] = [];
  const parts = folds.map((held, i) => {
    progress(`fold ${i + 1} of ${folds.length}`);
    const rest = folds.filter((fold) => fold !== held).flat();
    const { washes, options } = fitCrossValidated(data, rest, alone);
    chosen.push(options);
    return predictWashes(held, washes);
  });
  const all = parts.flat();
  const shares = parts.map(within);
  return done(
    [
      `Cross-validation over whole pigment pairs, ${folds.length} folds, seed ${request.seed}; every setting fitted or chosen within the other folds:`,
      lines(all),
      `  spread: folds ${shares.map(percent).join(', ')}; standard deviation ${percent(deviation(shares))}`,
      spreadOverPairs(all),
      told(chosen),
    ],
    all,
    mixtures,
  );
}

const whole = (text: string, name: string, least: number): number => {
  const value = Number(text);
  if (!Number.isInteger(value) || value < least)
    throw new FileFault(`--${name} is a whole number from ${least}, not ${text}.`);
  return value;
};

/** Reads the command line; what a person must mend is a FileFault. */
function requestOf(args: readonly string[]): Request | null {
  let values: ReturnType<typeof parse>['values'];
  try {
    values = parse(args).values;
  } catch (error) {
    throw new FileFault(`${(error as Error).message.split('. ')[0]}; --help tells what there is.`);
  }
  if (values.help) return null;
  const file = (name: string): string => resolve(REFERENCE, name);
  const washes = values.washes ?? file('watercolour-washes-ntu.csv');
  const fit = values.fit ?? [file('watercolour-mixtures-ntu.csv')];
  const absent = [washes, ...fit].find((path) => path.startsWith(REFERENCE) && !existsSync(path));
  if (absent)
    throw new FileFault(
      `The measured watercolours are not part of the project and not beside it (${absent}): give files with --washes, --fit and --score.`,
    );
  const { folds = '5', seed = '1' } = values;
  return {
    washes,
    fit,
    score: values.score ?? [],
    folds: whole(folds, 'folds', 2),
    seed: whole(seed, 'seed', 0),
  };
}

const parse = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    options: {
      fit: { type: 'string', multiple: true },
      score: { type: 'string', multiple: true },
      washes: { type: 'string' },
      folds: { type: 'string' },
      seed: { type: 'string' },
      help: { type: 'boolean' },
    },
  });

/** @returns the exit code: 1 with one sentence on standard error when a file cannot be read */
export function main(argv: readonly string[]): number {
  try {
    const request = requestOf(argv.slice(2));
    const show = (doing: string) => process.stderr.isTTY && console.error(`fitting: ${doing}`);
    console.log(request ? report(request, show).text : HELP);
    return 0;
  } catch (error) {
    if (!(error instanceof FileFault)) throw error;
    console.error(error.message);
    return 1;
  }
}

const started = process.argv[1];
if (started && existsSync(started) && realpathSync(started) === fileURLToPath(import.meta.url))
  process.exitCode = main(process.argv);
