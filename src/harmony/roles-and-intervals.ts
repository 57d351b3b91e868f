import { temperatureOf, warmCool } from '../colour/appearance.ts';
import { deltaE00 } from '../colour/difference.ts';
import { chroma, hueTurnDeg, type Lab } from '../colour/lab.ts';
import { oklabHueDeg, oklabOfLab } from '../colour/oklab.ts';
import { type PairHarmony, pairHarmony } from '../colour/pair-harmony.ts';
import type { Declared } from './period-family.ts';
import { type PeriodRow, periodOf } from './period-practice.ts';
import { NEUTRAL_CHROMA } from './variant-target.ts';

/** The properties of a colour that its relations depend on. */
export interface Related {
  readonly name: string;
  readonly lab: Lab;
  /** Share of the area, 0…1. */
  readonly share: number;
  readonly accent?: boolean;
  readonly declared?: Declared;
}

/**
 * Relation of two colours; `of` and `beside` are indices into the harmony. Differences are those
 * from `of` to `beside`.
 */
export interface Relation {
  readonly of: number;
  readonly beside: number;
  /** Difference of L*. One Munsell value step is about 10. */
  readonly lightness: number;
  /** Difference of C*. One Munsell chroma step is about 5. */
  readonly chroma: number;
  readonly hue: {
    /** Turn of the OKLab hue in degrees, −180…180; 0 if either colour has no hue. */
    readonly turnDeg: number;
    /** Which of the two, as indices into the harmony, are too neutral to have a hue. */
    readonly hueless: readonly number[];
  };
  /** Published two-colour harmony score, for information: nothing maximises it. */
  readonly score: PairHarmony;
  /** What period practice held of the pair, most specific first; empty if it was silent. */
  readonly period: readonly PeriodRow[];
}

/** Roles, temperature and pairs of a harmony's colours. */
export interface Relations {
  /** Index of the colour with the largest share. */
  readonly dominant: number;
  /** The colour that contrasts with the dominant one; null for a single colour. */
  readonly foil: number | null;
  /** The small vivid colour; null if there is none. */
  readonly accent: number | null;
  readonly temperature: {
    /** Shares of the area that are warm, cool and neither; they sum to 1. */
    readonly warm: number;
    readonly cool: number;
    readonly neither: number;
    /** Mean of the published warm-cool measure, weighted by share; −0.5 is neutral. */
    readonly measure: number;
  };
  readonly pairs: readonly Relation[];
  /** Mean of the pair scores; null for a single colour. */
  readonly meanScore: number | null;
}

/** Share from which a colour is too large for an accent. */
const ACCENT_TO = 0.1;
/** Share from which a colour is large enough for a foil. */
const FOIL_FROM = 0.05;

/**
 * Relations between the colours of a harmony.
 * @param colours at least one; CIELAB under D65
 * @throws RangeError if there is no colour
 */
export function relationsOf(colours: readonly Related[]): Relations {
  if (colours.length === 0) throw new RangeError('a harmony has at least one colour');
  const pairs: Relation[] = [];
  for (let i = 0; i < colours.length; i++)
    for (let j = i + 1; j < colours.length; j++) pairs.push(relation(colours, i, j));
  const meanScore =
    pairs.length === 0
      ? null
      : pairs.reduce((sum, { score }) => sum + score.score, 0) / pairs.length;
  return { ...rolesOf(colours), temperature: temperature(colours), pairs, meanScore };
}

export type Roles = Pick<Relations, 'dominant' | 'foil' | 'accent'>;

function rolesOf(colours: readonly Related[]): Roles {
  const all = colours.map((_, i) => i);
  const share = (i: number) => colours[i]!.share;
  const dominant = all.reduce((best, i) => (share(i) > share(best) ? i : best), 0);
  const others = all.filter((i) => i !== dominant);
  const far = (i: number) => deltaE00(colours[dominant]!.lab, colours[i]!.lab);
  const vivid = (i: number) => chroma(colours[i]!.lab);
  const most = (among: readonly number[], by: (i: number) => number): number | null =>
    among.reduce<number | null>((best, i) => (best === null || by(i) > by(best) ? i : best), null);

  const marked = others.filter((i) => colours[i]!.accent);
  const small = others.filter(
    (i) => share(i) < ACCENT_TO && vivid(i) > Math.max(NEUTRAL_CHROMA, vivid(dominant)),
  );
  const accent = marked.length > 0 ? most(marked, far) : most(small, vivid);
  const rest = others.filter((i) => i !== accent && !colours[i]!.accent);
  const large = rest.filter((i) => share(i) >= FOIL_FROM);
  return { dominant, foil: most(large.length > 0 ? large : rest, far), accent };
}

function temperature(colours: readonly Related[]): Relations['temperature'] {
  const total = colours.reduce((sum, { share }) => sum + share, 0) || 1;
  const sum = (which: ReturnType<typeof temperatureOf>) =>
    colours.reduce(
      (all, { lab, share }) => all + (temperatureOf(lab) === which ? share / total : 0),
      0,
    );
  const [warm, cool, neither] = [sum('warm'), sum('cool'), sum('neutral')];
  const measure = colours.reduce((all, { lab, share }) => all + (warmCool(lab) * share) / total, 0);
  return { warm, cool, neither, measure };
}

function relation(colours: readonly Related[], i: number, j: number): Relation {
  const [x, y] = [colours[i]!, colours[j]!];
  const hueless = [i, j].filter((one) => chroma(colours[one]!.lab) < NEUTRAL_CHROMA);
  const hueDeg = ({ lab }: Related) => oklabHueDeg(oklabOfLab(lab))!;
  return {
    of: i,
    beside: j,
    lightness: y.lab[0] - x.lab[0],
    chroma: chroma(y.lab) - chroma(x.lab),
    hue: { turnDeg: hueless.length > 0 ? 0 : hueTurnDeg(hueDeg(x), hueDeg(y)), hueless },
    score: pairHarmony(x.lab, y.lab),
    period: periodOf(x.lab, y.lab, [x.declared ?? null, y.declared ?? null]),
  };
}
