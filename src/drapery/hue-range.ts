import { chroma, type Lab } from '../colour/lab.ts';
import { oklabOfLab } from '../colour/oklab.ts';
import { isHueWithin } from '../harmony/hue-tolerance.ts';
import { bisectFurthest, type PileSearch } from '../harmony/pile-search.ts';
import { colourAtHue, NEUTRAL_CHROMA } from '../harmony/variant-target.ts';

/**
 * CIEDE2000 up to which a colour counts as mixed; larger if the painter allows few pigments, since
 * none matches exactly.
 */
const MET = 0.5;
const MET_OF_FEW = 1.5;
/** A neutral may change its tint as long as it stays neutral. */
const MET_NEUTRAL = 3;
/** Largest deviation of L* of such a mixture. */
const LEVEL = 0.5;
/**
 * Share of its cloth's chroma that a shadow keeps at least, or it looks dead; and the least C*
 * itself.
 */
const ALIVE = 0.3;
const LEAST_CHROMA = 4;

/** L* of the deepest and of the lightest colour of a hue. */
export interface LightnessEnds {
  readonly deepest: number;
  readonly lightest: number;
}

/** What a shelf can do with one hue: how light, how deep, how strong. */
export class HueRange {
  readonly neutral: boolean;
  /** OKLab hue, radians. */
  readonly hue: number;
  /** Least C* of a shadow. */
  readonly alive: number;
  private readonly bench: PileSearch;
  private readonly without: readonly string[];
  private readonly of: readonly string[] | undefined;
  private readonly lab: Lab;
  private known: LightnessEnds | null | undefined;

  /**
   * @param without pigments that no step may contain
   * @param of the allowed pigments; default: the whole shelf
   */
  constructor(bench: PileSearch, lab: Lab, without: readonly string[], of?: readonly string[]) {
    this.bench = bench;
    this.lab = lab;
    this.without = without;
    this.of = of;
    const C = chroma(lab);
    const [, a, b] = oklabOfLab(lab);
    this.hue = Math.atan2(b, a);
    this.neutral = C < NEUTRAL_CHROMA;
    this.alive = this.neutral ? 0 : Math.min(C, Math.max(LEAST_CHROMA, ALIVE * C));
  }

  /** The colour of this hue at L* and C*, turned by some degrees. */
  at(L: number, C: number, turnDeg = 0): Lab {
    return colourAtHue(this.hue + (turnDeg * Math.PI) / 180, L, C);
  }

  /** Whether the shelf mixes a colour with its hue held. */
  isMixable(lab: Lab): boolean {
    const { neutral, of, bench, without } = this;
    const met = of && of.length <= 3 ? (neutral ? MET_NEUTRAL : MET_OF_FEW) : MET;
    // Searching three pigments is much faster than four, and often enough.
    return [3, bench.most].some((most) => {
      const found = bench.mix(lab, { quick: true, most, without, ...(of ? { of } : {}) });
      if (found === null || Math.abs(found.lab[0] - lab[0]) > LEVEL) return false;
      return found.deltaE00 <= met && isHueWithin(lab, found.lab);
    });
  }

  /**
   * The strongest colour of this hue at a lightness, between two chromas; null if not even the
   * weaker one can be mixed.
   */
  strongest(L: number, most: number, least: number, turnDeg = 0, rounds = 5): Lab | null {
    const low = Math.min(least, most);
    return (
      bisectFurthest((t) => {
        const lab = this.at(L, low + t * (most - low), turnDeg);
        return this.isMixable(lab) ? lab : null;
      }, rounds)?.value ?? null
    );
  }

  /**
   * L* of the deepest and of the lightest colour of this hue; the lights may end in white. Null if
   * it cannot be mixed at all.
   */
  ends(): LightnessEnds | null {
    if (this.known === undefined) this.known = this.findEnds();
    return this.known;
  }

  private findEnds(): LightnessEnds | null {
    const chromas = this.neutral ? [0, chroma(this.lab)] : [this.alive];
    const middle = [this.lab[0], 45, 35, 60, 30, 75]
      .map((L) => Math.min(92, Math.max(24, L)))
      .find((L) => this.reaches(L, chromas));
    if (middle === undefined) return null;
    const deepest = bisectFurthest((t) => {
      const L = middle + t * (12 - middle);
      return this.reaches(L, chromas) ? L : null;
    }, 6);
    const pale = this.neutral ? chromas : [2, this.alive];
    const lightest = bisectFurthest((t) => {
      const L = middle + t * (100 - middle);
      return this.reaches(L, t === 0 ? chromas : pale) ? L : null;
    }, 6);
    return { deepest: deepest!.value, lightest: lightest!.value };
  }

  private reaches(L: number, chromas: readonly number[]): boolean {
    return chromas.some((C) => this.isMixable(this.at(L, C)));
  }
}
