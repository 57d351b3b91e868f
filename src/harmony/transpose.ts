import { deltaE00 } from '../colour/difference.ts';
import { angleDeg, chroma, type Lab } from '../colour/lab.ts';
import { REACH } from '../mixture/find.ts';
import { type Nearest, nearestOn } from '../mixture/nearest.ts';
import { type Solid, solidOf } from '../mixture/solid.ts';
import { type MixFault, notAColour, type WorkOptions } from '../mixture/work.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Lost, lostOf } from './interval.ts';
import { keyOf } from './key.ts';
import { type Move, moveAll, STILL } from './move.ts';

/** A harmony after a move, as aimed at and as mixed. */
export interface Moved {
  readonly colours: readonly {
    readonly from: Lab;
    readonly to: Lab;
    /** What the shelf mixes for `to`. */
    readonly mixed: Lab;
    /** CIEDE2000 from `to` to `mixed`. */
    readonly missed: number;
    /** CIEDE2000 from `from` to `mixed`: how far the colour is from what was seen. */
    readonly moved: number;
  }[];
  /** Mean of `moved`. */
  readonly moved: number;
  /** Every colour is reached. */
  readonly reached: boolean;
  readonly lost: Lost;
}

export interface Transposed extends Moved {
  readonly move: Move;
}

export interface Transposition {
  readonly transposed: Transposed;
  /** The same harmony keyed: lightness into the shelf's range, chroma by the same factor. */
  readonly keyed: Moved;
  /** Each colour matched alone, as near as it can be. */
  readonly alone: Moved;
}

const TURNS = [0, -4, 4, -8, 8, -12, 12];
const FACTORS = [1, 0.92, 0.84, 0.76, 0.68, 0.6, 0.5, 0.4];
const SHIFTS = [0, -2, 2, -4, 4, -7, 7, -11, 11, -16, 16];
/** A turn changes the temperature of everything: a degree must save this much difference. */
const PER_DEGREE = 0.15;
/** Lightness differences are the drawing: pressing them to nothing must save this much. */
const PER_FACTOR = 8;
/** Moves that are looked at in earnest. */
const SHORTLIST = 5;
/** What the real shelf may add to the cost of a move that the rough solid allows. */
const SLACK = 1;
/** Halvings of the chroma factor: to about a fiftieth of what is left. */
const ROUNDS = 6;
/** Chroma that the rough solid may overstate. */
const ROUGH = 1.04;

/**
 * Moves a harmony that is out of reach all together, as little as possible, so that every colour is
 * reached and its intervals are kept; beside it, what keying it and matching each colour alone give.
 * A harmony that is reached already does not move.
 */
export function transpose(
  colours: readonly Lab[],
  shelf: Shelf,
  options: WorkOptions = {},
): Result<Transposition, MixFault> {
  const odd = notAColour(colours);
  if (odd) return odd;
  const { most = 4, constraints = {}, stopped, onProgress } = options;
  const on = nearestOn(shelf, most, constraints, stopped);
  if (!on.ok) return on;
  const mixer = new Mixer(on.value);
  const alone = mixer.moved(colours, colours);
  const keyed = mixer.moved(colours, colours.map(keyOf(colours, shelf)));
  if (!alone || !keyed) return fail({ code: 'stopped' });
  onProgress?.(0.2);
  if (alone.reached) return ok({ transposed: { ...alone, move: STILL }, keyed, alone });

  const moves = shortlist(colours, solidOf({ ...shelf, paints: on.value.paints }));
  let best: Tried | null = null;
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

/** A move as tried on the shelf. */
interface Tried {
  readonly move: Move;
  /** Worst difference beyond reach; 0 where every colour is reached. */
  readonly missed: number;
  readonly cost: number;
}

const toll = ({ turnDeg, lightness }: Move): number =>
  PER_DEGREE * Math.abs(turnDeg) + PER_FACTOR * (1 - lightness) ** 2;

/** What a move costs a harmony: the mean difference and the tolls. */
function costOf(colours: readonly Lab[], move: Move): number {
  const to = moveAll(colours, move);
  return (
    colours.reduce((sum, lab, i) => sum + deltaE00(lab, to[i]!), 0) / colours.length + toll(move)
  );
}

/** The cheapest moves that the rough solid of the shelf allows. */
function shortlist(colours: readonly Lab[], solid: Solid): Move[] {
  const found: { move: Move; cost: number }[] = [];
  for (const turnDeg of TURNS) {
    for (const lightness of FACTORS) {
      for (const shift of SHIFTS) {
        const factor = mostChroma(colours, { lightness, shift, chroma: 1, turnDeg }, solid);
        if (factor === null) continue;
        const move = { lightness, shift, chroma: factor, turnDeg };
        found.push({ move, cost: costOf(colours, move) });
      }
    }
  }
  // Where not even greys fit, the whole range is pressed into the middle of the shelf's.
  if (found.length === 0) {
    const mean = colours.reduce((sum, [L]) => sum + L, 0) / colours.length;
    const shift = (solid.darkest + solid.lightest) / 2 - mean;
    found.push({ move: { lightness: 0.1, shift, chroma: 0.1, turnDeg: 0 }, cost: 0 });
  }
  found.sort((a, b) => a.cost - b.cost);
  // Neighbours on the grid cost nearly the same: one of each kind is enough.
  const kinds = new Set<string>();
  return found
    .filter(({ move }) => {
      const kind = `${move.turnDeg} ${Math.round(move.lightness * 4)} ${Math.round(move.shift / 5)}`;
      return kinds.size < SHORTLIST && !kinds.has(kind) && kinds.add(kind);
    })
    .map(({ move }) => move);
}

/** The largest chroma factor up to 1 at which a solid holds every colour; null where not even greys fit. */
function mostChroma(colours: readonly Lab[], move: Move, solid: Solid): number | null {
  let factor = 1;
  for (const to of moveAll(colours, move)) {
    const reach = solid.reach(to[0], angleDeg(to[1], to[2]));
    if (reach < 0) return null;
    const C = chroma(to);
    if (C > ROUGH * reach) factor = Math.min(factor, (ROUGH * reach) / C);
  }
  return factor;
}

class Mixer {
  private readonly nearest: Nearest;

  constructor(nearest: Nearest) {
    this.nearest = nearest;
  }

  /** A harmony mixed as aimed at; null when stopped. */
  moved(from: readonly Lab[], to: readonly Lab[]): Moved | null {
    const colours: Moved['colours'][number][] = [];
    for (const [i, aim] of to.entries()) {
      const near = this.nearest.of(aim);
      if (!near) return null;
      const moved = deltaE00(from[i]!, near.lab);
      colours.push({ from: from[i]!, to: aim, mixed: near.lab, missed: near.deltaE00, moved });
    }
    return {
      colours,
      moved: colours.reduce((sum, c) => sum + c.moved, 0) / colours.length,
      reached: colours.every((c) => c.missed <= REACH),
      lost: lostOf(
        from,
        colours.map((c) => c.mixed),
      ),
    };
  }

  /** The most chroma at which a move is really reached, by halving; null when stopped. */
  reach(colours: readonly Lab[], move: Move): Tried | null {
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
        // The first guess is good: look close to it before halving what is left.
        guess = round === 0 ? Math.min(1, guess * 1.06) : (low + high) / 2;
      } else {
        high = guess;
        guess = low === 0 ? high * 0.92 : (low + high) / 2;
      }
    }
    const chosen = { ...move, chroma: low > 0 ? low : guess };
    return { move: chosen, missed, cost: costOf(colours, chosen) };
  }

  /** The grid of moves is coarse: whatever of the move is not needed is given back. Null when stopped. */
  ease(colours: readonly Lab[], from: Tried): Move | null {
    let { move, cost } = from;
    for (const share of [0.5, 0.25, 0.12]) {
      for (const axis of ['lightness', 'shift', 'turnDeg', 'chroma'] as const) {
        for (let again = 0; again < 3; again++) {
          const eased = { ...move, [axis]: move[axis] + share * (STILL[axis] - move[axis]) };
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

  /** Worst difference beyond reach of any colour; the first miss that is plain ends the look. */
  private beyond(colours: readonly Lab[]): number | null {
    let worst = 0;
    for (const lab of colours) {
      const near = this.nearest.of(lab, true);
      if (!near) return null;
      if (near.deltaE00 > REACH) worst = Math.max(worst, near.deltaE00 - REACH);
      // A plain miss: the others need not be asked.
      if (worst > 3 * REACH) break;
    }
    return worst;
  }
}
