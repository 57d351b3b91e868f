import { chroma, type Lab } from '../colour/lab.ts';
import type { Bench } from '../harmony/bench.ts';
import { hueHeld } from '../harmony/held.ts';
import { plain } from '../harmony/made.ts';
import { NEUTRAL_CHROMA } from '../harmony/vary.ts';
import type { Mixture, Share } from '../mixture/mixture.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { type BlackRule, neverIn, outsideRule } from './black.ts';
import type { Glaze } from './fold.ts';

/** A pile with fewer pigments serves where it comes this near: no eye sees more; … */
const SERVES = 1;
/** … of a neutral cloth, whose tint may turn a little. */
const SERVES_NEUTRAL = 2.5;
/** More than this nearer, and pigments that the garment has not yet are worth fetching. */
const WORTH = 1;

/** A colour as a recipe gives it and as its whole parts do. */
export type Seen = Pick<Mixture, 'lab' | 'partsLab'>;

/** One step as laid. */
export interface Laid {
  readonly wish: Lab;
  readonly mixture: Mixture;
  /** What is seen of the recipe and of its parts. */
  readonly lab: Lab;
  readonly partsLab: Lab;
  readonly glaze: Glaze | null;
}

/** What a pile must obey beside coming near. */
export interface Bounds {
  /** L* of both the recipe and its whole parts lie under these of the step before. */
  readonly below?: Seen | undefined;
  readonly above?: Seen | undefined;
  /** The hue to be held within 5 degrees. */
  readonly hue?: Lab | undefined;
  /** How far L* may miss, so that the next steps keep their room. */
  readonly slack?: number | undefined;
}

/** Lays one pile after another for a cloth, with as few pigments as serve. */
export class Layer {
  /** Pigments that the cloth has so far. */
  readonly held: string[] = [];
  private readonly bench: Bench;
  private readonly rule: BlackRule;
  private readonly of: readonly string[] | undefined;
  private readonly serves: number;

  /** @param local the cloth's colour */
  constructor(bench: Bench, local: Lab, rule: BlackRule, of?: readonly string[]) {
    this.serves = chroma(local) < NEUTRAL_CHROMA ? SERVES_NEUTRAL : SERVES;
    this.bench = bench;
    this.rule = rule;
    this.of = of;
  }

  /**
   * The pile for a colour: of what the cloth has already, else of the whole shelf; with the fewest
   * pigments that serve. Where nothing obeys, the nearest whose lightness does; null where none.
   */
  pile(wish: Lab, bounds: Bounds = {}): Mixture | null {
    const found = this.find(wish, bounds);
    return found && this.take(found);
  }

  /** The same, without noting it: for a look. */
  find(wish: Lab, bounds: Bounds = {}): Mixture | null {
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
        let mixture = plain(found);
        if (barredIn(mixture, this.rule.barred, shelf)) {
          const without = this.bench.mix(wish, {
            most: count,
            quick: count > 2,
            without: this.rule.barred,
            ...(of ? { of } : {}),
          });
          if (without === null) continue;
          mixture = plain(without);
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

  /** Whether some pile that the rule allows comes so near that no eye sees more. */
  reaches(wish: Lab): boolean {
    const found = this.bench.mix(wish, {
      quick: true,
      without: this.rule.barred,
      ...(this.of ? { of: this.of } : {}),
    });
    return found !== null && found.deltaE00 <= SERVES;
  }

  /** Notes a pile that was chosen elsewhere. */
  take(mixture: Mixture): Mixture {
    for (const { pigment } of [...mixture.recipe, ...mixture.parts])
      if (!this.held.includes(pigment)) this.held.push(pigment);
    return mixture;
  }

  /** What is on the palette for this cloth; a white is always at hand. */
  private own(): readonly string[] {
    if (this.held.length === 0) return [];
    const { white } = this.bench.shelf;
    const own = white !== null && !this.held.includes(white) ? [...this.held, white] : this.held;
    return this.of ? own.filter((pigment) => this.of!.includes(pigment)) : own;
  }

  private ordered(mixture: Mixture, { below, above }: Bounds): boolean {
    return (
      (below === undefined || lower(mixture, below)) &&
      (above === undefined || lower(above, mixture))
    );
  }

  private obeys(mixture: Mixture, wish: Lab, { hue, slack = 1 }: Bounds): boolean {
    return (
      Math.abs(mixture.lab[0] - wish[0]) <= slack &&
      Math.abs(mixture.partsLab[0] - wish[0]) <= 2 * slack &&
      mixture.partsDeltaE00 <= 3 &&
      (hue === undefined || (hueHeld(hue, mixture.lab) && hueHeld(hue, mixture.partsLab)))
    );
  }
}

/** Whether a pile holds black outside the rule, as a recipe or in its whole parts. */
export function barredIn(mixture: Mixture, barred: readonly string[], shelf: Shelf): boolean {
  const parts: Share[] = mixture.parts.map(({ pigment, parts: share }) => ({ pigment, share }));
  return [mixture.recipe, parts].some((recipe) => outsideRule(recipe, barred, shelf).length > 0);
}

/** Both as a recipe and in whole parts. */
export const lower = (one: Seen, than: Seen): boolean =>
  one.lab[0] < than.lab[0] && one.partsLab[0] < than.partsLab[0];

/** Lightness counts twice: the ladder lives by it. */
const nearest = (mixtures: readonly Mixture[], wish: Lab): Mixture | null =>
  mixtures.toSorted((p, q) => miss(p, wish) - miss(q, wish))[0] ?? null;

const miss = ({ lab, deltaE00 }: Mixture, wish: Lab): number =>
  deltaE00 + Math.abs(lab[0] - wish[0]);

/** The same colour with less chroma, as far as needed for `passes`; null where not even its grey does. */
export function dulled(lab: Lab, passes: (lab: Lab) => boolean): Lab | null {
  if (passes(lab)) return lab;
  let [low, high] = [0, 1];
  const at = (t: number): Lab => [lab[0], lab[1] * t, lab[2] * t];
  if (chroma(lab) < 1 || !passes(at(0))) return null;
  for (let round = 0; round < 5; round++) {
    const middle = (low + high) / 2;
    if (passes(at(middle))) low = middle;
    else high = middle;
  }
  return at(low);
}
