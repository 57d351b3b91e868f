import { bisect } from '../bisection.ts';
import { chroma, type Lab } from '../colour/lab.ts';
import { isHueWithin } from '../harmony/hue-tolerance.ts';
import type { PileSearch } from '../harmony/pile-search.ts';
import { NEUTRAL_CHROMA } from '../harmony/variant-target.ts';
import type { Mixture, Share } from '../mixture/mixture-types.ts';
import { mixtureOnly } from '../mixture/normalise.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { type BlackRule, neverIn, outsideRule } from './black-rule.ts';
import type { Glaze } from './cloth-types.ts';

/** CIEDE2000 up to which a pile with fewer pigments serves: no visible difference. */
const SERVES = 1;
/** The same for a neutral cloth, whose tint may vary a little. */
const SERVES_NEUTRAL = 2.5;
/** Gain in CIEDE2000 that justifies pigments that the garment does not use yet. */
const WORTH = 1;

/** Colours of a recipe and of its whole parts. */
type RecipeColours = Pick<Mixture, 'lab' | 'partsLab'>;

/** One finished step. */
export interface FinishedStep {
  readonly wish: Lab;
  readonly mixture: Mixture;
  /** Visible colours of the recipe and of its parts. */
  readonly lab: Lab;
  readonly partsLab: Lab;
  readonly glaze: Glaze | null;
}

/** Constraints on a pile besides its difference from the target. */
export interface StepConstraints {
  /** L* of the recipe and of its parts must be below these, of the step before … */
  readonly below?: RecipeColours | undefined;
  /** … and above these, of the step after. */
  readonly above?: RecipeColours | undefined;
  /** The hue to hold within 5 degrees. */
  readonly hue?: Lab | undefined;
  /** Largest deviation of L*, so that the next steps keep their room. */
  readonly slack?: number | undefined;
}

/** Finds one pile after another for a cloth, with as few pigments as possible. */
export class ClothPileSearch {
  /** Pigments that the cloth uses so far. */
  readonly usedPigments: string[] = [];
  private readonly bench: PileSearch;
  private readonly rule: BlackRule;
  private readonly of: readonly string[] | undefined;
  private readonly serves: number;

  /**
   * @param local the cloth's colour, CIELAB under D65
   * @param of the allowed pigments; default: the whole shelf
   */
  constructor(bench: PileSearch, local: Lab, rule: BlackRule, of?: readonly string[]) {
    this.serves = chroma(local) < NEUTRAL_CHROMA ? SERVES_NEUTRAL : SERVES;
    this.bench = bench;
    this.rule = rule;
    this.of = of;
  }

  /**
   * Finds the pile for a colour and records its pigments: from the cloth's own pigments, otherwise
   * from the whole shelf, with the fewest that serve. If no pile meets every constraint, returns
   * the nearest with the right order of lightness; null if there is none.
   */
  pile(wish: Lab, bounds: StepConstraints = {}): Mixture | null {
    const found = this.find(wish, bounds);
    return found && this.take(found);
  }

  /** Like {@link pile}, without recording the pigments. */
  find(wish: Lab, bounds: StepConstraints = {}): Mixture | null {
    const { shelf, most } = this.bench;
    const seen: Mixture[] = [];
    const best = (of: readonly string[] | undefined): Mixture | null => {
      for (let count = 1; count <= most; count++) {
        const found = this.bench.mix(wish, {
          most: count,
          quick: count > 2,
          without: neverIn(this.rule.barred, shelf),
          ...(of ? { of } : {}),
        });
        if (found === null) continue;
        let mixture = mixtureOnly(found);
        if (barredIn(mixture, this.rule.barred, shelf)) {
          const without = this.bench.mix(wish, {
            most: count,
            quick: count > 2,
            without: this.rule.barred,
            ...(of ? { of } : {}),
          });
          if (without === null) continue;
          mixture = mixtureOnly(without);
        }
        if (!this.ordered(mixture, bounds)) continue;
        seen.push(mixture);
        if (mixture.deltaE00 <= this.serves && this.obeys(mixture, wish, bounds)) return mixture;
      }
      return null;
    };
    const own = this.own();
    const kept = own.length > 0 ? best(own) : null;
    if (kept !== null) return kept;
    const near = nearest(seen, wish);
    const fetched = best(this.of) ?? nearest(seen, wish);
    if (fetched === null) return null;
    const stay =
      near !== null &&
      near.deltaE00 <= fetched.deltaE00 + WORTH &&
      this.obeys(near, wish, bounds) &&
      near.deltaE00 <= 3;
    return stay ? near : fetched;
  }

  /** Whether an allowed pile matches without a visible difference. */
  reaches(wish: Lab): boolean {
    const found = this.bench.mix(wish, {
      quick: true,
      without: this.rule.barred,
      ...(this.of ? { of: this.of } : {}),
    });
    return found !== null && found.deltaE00 <= SERVES;
  }

  /** Records the pigments of a pile. */
  take(mixture: Mixture): Mixture {
    for (const { pigment } of [...mixture.recipe, ...mixture.parts])
      if (!this.usedPigments.includes(pigment)) this.usedPigments.push(pigment);
    return mixture;
  }

  /** Pigments on the palette for this cloth; a white is always available. */
  private own(): readonly string[] {
    if (this.usedPigments.length === 0) return [];
    const { white } = this.bench.shelf;
    const own =
      white !== null && !this.usedPigments.includes(white)
        ? [...this.usedPigments, white]
        : this.usedPigments;
    return this.of ? own.filter((pigment) => this.of!.includes(pigment)) : own;
  }

  private ordered(mixture: Mixture, { below, above }: StepConstraints): boolean {
    return (
      (below === undefined || isDarker(mixture, below)) &&
      (above === undefined || isDarker(above, mixture))
    );
  }

  private obeys(mixture: Mixture, wish: Lab, { hue, slack = 1 }: StepConstraints): boolean {
    return (
      Math.abs(mixture.lab[0] - wish[0]) <= slack &&
      Math.abs(mixture.partsLab[0] - wish[0]) <= 2 * slack &&
      mixture.partsDeltaE00 <= 3 &&
      (hue === undefined || (isHueWithin(hue, mixture.lab) && isHueWithin(hue, mixture.partsLab)))
    );
  }
}

/** Whether a pile contains black against the rule, as a recipe or in whole parts. */
export function barredIn(mixture: Mixture, barred: readonly string[], shelf: Shelf): boolean {
  const parts: Share[] = mixture.parts.map(({ pigment, parts: share }) => ({ pigment, share }));
  return [mixture.recipe, parts].some((recipe) => outsideRule(recipe, barred, shelf).length > 0);
}

/** Compares both the recipe and its whole parts. */
const isDarker = (one: RecipeColours, than: RecipeColours): boolean =>
  one.lab[0] < than.lab[0] && one.partsLab[0] < than.partsLab[0];

/** Lightness counts twice, because the ladder depends on it. */
const nearest = (mixtures: readonly Mixture[], wish: Lab): Mixture | null =>
  mixtures.toSorted((p, q) => miss(p, wish) - miss(q, wish))[0] ?? null;

const miss = ({ lab, deltaE00 }: Mixture, wish: Lab): number =>
  deltaE00 + Math.abs(lab[0] - wish[0]);

/** Reduces chroma as far as `passes` requires, by bisection; null if not even grey passes. */
export function reduceChroma(lab: Lab, passes: (lab: Lab) => boolean): Lab | null {
  if (passes(lab)) return lab;
  const at = (t: number): Lab => [lab[0], lab[1] * t, lab[2] * t];
  if (chroma(lab) < 1 || !passes(at(0))) return null;
  const [most] = bisect(0, 1, (share) => passes(at(share)), 5);
  return at(most);
}
