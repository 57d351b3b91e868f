import { chroma, type Lab } from '../colour/lab.ts';
import { type PileSearch, type PileSearchOptions, withPileSearch } from '../harmony/pile-search.ts';
import { masstonesOf } from '../pigment/nearest-masstone.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { lossToBlack } from './black-loss.ts';
import { ruleFor, shotShadows, tonesFor, underGlaze } from './cloth-limits.ts';
import {
  type Cloth,
  type ClothRequest,
  type DraperyFault,
  DraperyFaultError,
  type Garment,
  type GarmentRequest,
} from './cloth-types.ts';
import { remarksOf } from './drapery-remarks.ts';
import { LEAST_DOWN, LEAST_UP, lightnesses, UNDER_WHITE } from './fabric.ts';
import { blendTarget, lightsOf, shadowsOf } from './fold-model.ts';
import { mixFolds } from './fold-piles.ts';
import { ClothPileSearch } from './ladder-search.ts';
import { photoFoldTargets } from './photo-fold-model.ts';

/** Options of a drapery job. */
interface DraperyOptions extends PileSearchOptions {
  /** Called with progress 0…1. */
  readonly onProgress?: (done: number) => void;
}

/**
 * Computes a garment as ladders of six steps, each with its pile, or its body colour and glaze;
 * with a lining and a trim if wanted. Lightness falls strictly from step to step, for recipes and
 * for their whole parts. Below the local colour the hue stays within 5 degrees (OKLab) of it; in
 * shot cloth, of the shadows' own hue.
 *
 * @returns a fault if the shelf does not have six lightnesses for the cloth, has no glaze of its
 *   hue, or the chosen way lacks an input
 * @throws RangeError for `most` outside 1 to 6
 */
export function drape(
  wish: GarmentRequest,
  shelf: Shelf,
  options: DraperyOptions = {},
): Result<Garment, DraperyFault> {
  const wishes = [wish, wish.lining, wish.trim].filter((one) => one !== undefined);
  const report = (i: number) => options.onProgress?.(i / wishes.length);
  try {
    const made = withPileSearch(shelf, options, (bench) => {
      const garment = clothOf(wish, bench);
      report(1);
      const lining = wish.lining ? clothOf(wish.lining, bench) : null;
      if (lining) report(2);
      const trim = wish.trim ? clothOf(wish.trim, bench) : null;
      report(wishes.length);
      return { ...garment, lining, trim };
    });
    return made.ok ? ok(made.value) : fail(made.fault);
  } catch (error) {
    if (error instanceof DraperyFaultError) return fail(error.fault);
    throw error;
  }
}

function clothOf(wish: ClothRequest, bench: PileSearch): Cloth {
  const { shelf } = bench;
  const { name, way, stuff } = wish;
  if (way === 'as nature had it' && wish.ladder?.length !== 6)
    throw new DraperyFaultError({ code: 'wants-more', name, what: 'ladder' });
  if (way === 'shot cloth' && !wish.shadows)
    throw new DraperyFaultError({ code: 'wants-more', name, what: 'shadows' });

  const lab = way === 'as nature had it' ? wish.ladder![2]! : wish.lab;
  const rule = ruleFor(lab, wish, bench);
  const tones = tonesFor(lab, wish, rule.barred, bench);
  const reach = tones?.ends() ?? null;
  const ends =
    tones && reach && way === 'underpaint and glaze'
      ? underGlaze(reach, tones, wish, bench)
      : reach;
  const room = ends === null ? 0 : ends.lightest - ends.deepest;
  if (tones === null || ends === null || room < 4)
    throw new DraperyFaultError({ code: 'no-range', name });

  const white = whiteOf(shelf, wish.pigments);
  // Keep a reserve for the brightest gleam and the deepest dark (Alberti 1435).
  const top = Math.min(
    ends.lightest - Math.min(LEAST_UP, 0.4 * room),
    white[0] - UNDER_WHITE,
    Math.max(ends.deepest + Math.min(LEAST_DOWN, 0.55 * room), lab[0]),
  );
  const { folds, reflected } = firstThatLays(
    (more) => {
      if (way === 'as nature had it') {
        const nature = photoFoldTargets(wish.ladder!, shelf, tones, ends, more);
        if (nature === null) throw new DraperyFaultError({ code: 'no-range', name });
        return nature;
      }
      const foot = ends.deepest + Math.min(LEAST_DOWN, 0.55 * room);
      const L = top - foot > ROOM ? Math.max(foot, top - ROOM * more) : top + ROOM * more;
      const local = tones.strongest(L, chroma(lab), 0, 0, 7) ?? tones.at(L, 0);
      const steps = lightnesses(L, { ...ends, white: white[0] }, stuff, wish.even ?? false);
      const lights = lightsOf(tones, local, [steps[0]!, steps[1]!], white, wish.upright ?? false);
      if (way !== 'shot cloth')
        return [...lights, local, ...shadowsOf(tones, local, steps.slice(3))];
      const shot = shotShadows(wish, local, steps, bench);
      return [
        ...lights,
        local,
        blendTarget(tones, local, shot.wishes[0]!, shot.half),
        ...shot.wishes,
      ];
    },
    (wishes) => {
      const layer = new ClothPileSearch(bench, lab, rule, wish.pigments);
      return mixFolds({ wish, wishes, shadowHue: wish.shadows }, layer, bench);
    },
  );
  const localFold = folds[2]!;
  return {
    name,
    way,
    stuff,
    folds,
    reflected,
    black: rule,
    blackLoss:
      rule.barred.length === 0 || way === 'shot cloth'
        ? null
        : lossToBlack(localFold.mixture, folds[4]!, rule.barred, shelf),
    pigments: pigmentsOf(folds, reflected),
    deepest: deepestOf(folds[5]!, shelf),
    remarks: remarksOf(wish, lab, folds, shelf),
  };
}

/** The lightest masstone among the allowed pigments. */
function whiteOf(shelf: Shelf, pigments: readonly string[] | undefined): Lab {
  const masstones = masstonesOf(shelf).filter(({ pigment }) => pigments?.includes(pigment) ?? true);
  return masstones.map(({ lab }) => lab).toSorted((p, q) => q[0] - p[0])[0] ?? [100, 0, 0];
}

/**
 * L* by which the local colour gives way if whole parts yield no six lightnesses, and the number of
 * tries.
 */
const ROOM = 6;
const TRIES = 4;

/** Returns the first plan that can be mixed; each further plan makes more room. */
function firstThatLays<T>(
  plan: (more: number) => readonly Lab[],
  lay: (wishes: readonly Lab[]) => T,
): T {
  for (let more = 0; ; more++) {
    const wishes = plan(more);
    try {
      return lay(wishes);
    } catch (error) {
      if (
        !(error instanceof DraperyFaultError && error.fault.code === 'no-range') ||
        more + 1 >= TRIES
      )
        throw error;
    }
  }
}

/** The glaze, or the largest pigment of the deepest pile other than white. */
function deepestOf({ glaze, mixture }: Cloth['folds'][number], { white }: Shelf): string {
  const coloured = mixture.recipe.find(({ pigment }) => pigment !== white);
  return glaze?.pigment ?? (coloured ?? mixture.recipe[0]!).pigment;
}

function pigmentsOf(
  folds: readonly Cloth['folds'][number][],
  reflected: Cloth['reflected'],
): string[] {
  const all = [...folds, ...(reflected ? [reflected] : [])].flatMap(({ mixture, glaze }) => [
    ...mixture.recipe.map(({ pigment }) => pigment),
    ...mixture.parts.map(({ pigment }) => pigment),
    ...(glaze ? [glaze.pigment] : []),
  ]);
  return [...new Set(all)];
}
