import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { REACHABLE_DELTA_E } from '../mixture/mixture-types.ts';
import { type NearestColourFinder, nearestColourFinder } from '../mixture/nearest-colour.ts';
import {
  invalidColourFault,
  type MixFault,
  type MixtureSearchOptions,
} from '../mixture/search-options.ts';
import { shelfGamutOf } from '../mixture/shelf-gamut.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { type HarmonyMove, IDENTITY_MOVE, moveAll } from './harmony-move.ts';
import { type IntervalLoss, intervalLoss } from './interval-loss.ts';
import { costOf, shortlist } from './move-candidates.ts';
import { rangeMapping } from './shelf-range.ts';

/** A harmony after a move: targets, and what the shelf mixes for them. */
export interface MovedHarmony {
  readonly colours: readonly {
    readonly from: Lab;
    readonly to: Lab;
    /** Nearest mixture of `to`. */
    readonly mixed: Lab;
    /** CIEDE2000 from `to` to `mixed`. */
    readonly missed: number;
    /** CIEDE2000 from `from` to `mixed`: the distance from the colour as seen. */
    readonly moved: number;
  }[];
  /** Mean of `moved`. */
  readonly moved: number;
  /** Whether every colour is reached. */
  readonly reached: boolean;
  readonly lost: IntervalLoss;
}

/** A harmony within reach, with the move that brought it there. */
interface Transposed extends MovedHarmony {
  readonly move: HarmonyMove;
}

/** The harmony within reach, and two alternatives for comparison. */
export interface Transposition {
  readonly transposed: Transposed;
  /**
   * The harmony with its lightness mapped into the shelf's range, and chroma by the same factor.
   */
  readonly keyed: MovedHarmony;
  /** Each colour matched on its own, as near as possible. */
  readonly alone: MovedHarmony;
}

/** Cost that the real shelf may add to a move that the approximate gamut allows. */
const SLACK = 1;
/** Bisection steps for the chroma factor, to about a fiftieth of the interval. */
const ROUNDS = 6;

/**
 * Brings a harmony within reach: moves all colours together, as little as possible, so that each is
 * reached and the intervals are kept. For comparison also returns the harmony mapped into range and
 * each colour matched on its own. A harmony that is already reached does not move.
 * @param colours CIELAB under D65
 * @returns a fault if a colour or the constraints are invalid, or the job is stopped
 */
export function transpose(
  colours: readonly Lab[],
  shelf: Shelf,
  options: MixtureSearchOptions = {},
): Result<Transposition, MixFault> {
  const odd = invalidColourFault(colours);
  if (odd) return odd;
  const { most = 4, constraints = {}, stopped, onProgress } = options;
  const on = nearestColourFinder(shelf, most, constraints, stopped);
  if (!on.ok) return on;
  const mixer = new MoveMixer(on.value);
  const alone = mixer.moved(colours, colours);
  const keyed = mixer.moved(colours, colours.map(rangeMapping(colours, shelf)));
  if (!alone || !keyed) return fail({ code: 'stopped' });
  onProgress?.(0.2);
  if (alone.reached) return ok({ transposed: { ...alone, move: IDENTITY_MOVE }, keyed, alone });

  const moves = shortlist(colours, shelfGamutOf({ ...shelf, paints: on.value.paints }));
  let best: MoveTrial | null = null;
  for (const [i, move] of moves.entries()) {
    if (best && costOf(colours, move) > best.cost + SLACK) continue;
    const tried = mixer.reach(colours, move);
    if (!tried) return fail({ code: 'stopped' });
    if (
      !best ||
      tried.missed < best.missed ||
      (tried.missed === best.missed && tried.cost < best.cost)
    )
      best = tried;
    onProgress?.(0.2 + (0.7 * (i + 1)) / moves.length);
  }
  const move = best!.missed === 0 ? mixer.ease(colours, best!) : best!.move;
  if (!move) return fail({ code: 'stopped' });
  const moved = mixer.moved(colours, moveAll(colours, move));
  if (!moved) return fail({ code: 'stopped' });
  return ok({ transposed: { ...moved, move }, keyed, alone });
}

/** A move and its outcome on the shelf. */
interface MoveTrial {
  readonly move: HarmonyMove;
  /** Largest difference beyond reach; 0 if every colour is reached. */
  readonly missed: number;
  readonly cost: number;
}

/** Tries moves against the nearest mixtures of a shelf. */
class MoveMixer {
  private readonly nearest: NearestColourFinder;

  constructor(nearest: NearestColourFinder) {
    this.nearest = nearest;
  }

  /** Mixes a harmony at given targets; null if stopped. */
  moved(from: readonly Lab[], to: readonly Lab[]): MovedHarmony | null {
    const colours: MovedHarmony['colours'][number][] = [];
    for (const [i, aim] of to.entries()) {
      const near = this.nearest.of(aim);
      if (!near) return null;
      const moved = deltaE00(from[i]!, near.lab);
      colours.push({ from: from[i]!, to: aim, mixed: near.lab, missed: near.deltaE00, moved });
    }
    return {
      colours,
      moved: colours.reduce((sum, c) => sum + c.moved, 0) / colours.length,
      reached: colours.every((c) => c.missed <= REACHABLE_DELTA_E),
      lost: intervalLoss(
        from,
        colours.map((c) => c.mixed),
      ),
    };
  }

  /** Largest chroma factor at which a move is reached, by bisection; null if stopped. */
  reach(colours: readonly Lab[], move: HarmonyMove): MoveTrial | null {
    let low = 0;
    let high = 1;
    let guess = move.chroma;
    let missed = Number.POSITIVE_INFINITY;
    for (let round = 0; round < ROUNDS; round++) {
      const beyond = this.beyond(moveAll(colours, { ...move, chroma: guess }));
      if (beyond === null) return null;
      missed = Math.min(missed, beyond);
      if (beyond === 0) {
        low = guess;
        if (guess === 1) break;
        // The first guess is good: search close to it before bisecting.
        guess = round === 0 ? Math.min(1, guess * 1.06) : (low + high) / 2;
      } else {
        high = guess;
        guess = low === 0 ? high * 0.92 : (low + high) / 2;
      }
    }
    const chosen = { ...move, chroma: low > 0 ? low : guess };
    return { move: chosen, missed, cost: costOf(colours, chosen) };
  }

  /** Refines a move after the coarse grid: takes back whatever is not needed. Null if stopped. */
  ease(colours: readonly Lab[], from: MoveTrial): HarmonyMove | null {
    let { move, cost } = from;
    for (const share of [0.5, 0.25, 0.12]) {
      for (const axis of ['lightness', 'shift', 'turnDeg', 'chroma'] as const) {
        for (let again = 0; again < 3; again++) {
          const eased = {
            ...move,
            [axis]: move[axis] + share * (IDENTITY_MOVE[axis] - move[axis]),
          };
          const less = costOf(colours, eased);
          if (less >= cost - 0.01) break;
          const beyond = this.beyond(moveAll(colours, eased));
          if (beyond === null) return null;
          if (beyond > 0) break;
          move = eased;
          cost = less;
        }
      }
    }
    return move;
  }

  /** Largest difference beyond reach; stops at the first clear miss. Null if stopped. */
  private beyond(colours: readonly Lab[]): number | null {
    let worst = 0;
    for (const lab of colours) {
      const near = this.nearest.of(lab, true);
      if (!near) return null;
      if (near.deltaE00 > REACHABLE_DELTA_E)
        worst = Math.max(worst, near.deltaE00 - REACHABLE_DELTA_E);
      // A clear miss: skip the other colours.
      if (worst > 3 * REACHABLE_DELTA_E) break;
    }
    return worst;
  }
}
