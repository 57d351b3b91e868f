import { temperatureOf, warmCool } from '../colour/appearance.ts';
import { deltaE00 } from '../colour/difference.ts';
import { chroma } from '../colour/lab.ts';
import { type PairHarmony, pairHarmony } from '../colour/pair-harmony.ts';
import { hue, type Interval, lightness, purity, type Related } from './colour-intervals.ts';
import { type PeriodRow, periodOf } from './period-practice.ts';
import { NEUTRAL_CHROMA } from './variant-target.ts';

/** Relation of two colours; `of` and `beside` are indices into the harmony. */
interface Relation {
  readonly of: number;
  readonly beside: number;
  readonly lightness: Interval;
  readonly chroma: Interval;
  readonly hue: Interval;
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
    readonly words: string;
  };
  readonly pairs: readonly Relation[];
  /** Mean of the pair scores; null for a single colour. */
  readonly meanScore: number | null;
  /** Names the dominant colour, the foil and the accent in a sentence. */
  readonly words: string;
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
  const roles = rolesOf(colours);
  const pairs: Relation[] = [];
  for (let i = 0; i < colours.length; i++)
    for (let j = i + 1; j < colours.length; j++) pairs.push(relation(colours, i, j));
  const meanScore =
    pairs.length === 0
      ? null
      : pairs.reduce((sum, { score }) => sum + score.score, 0) / pairs.length;
  return {
    ...roles,
    temperature: temperature(colours),
    pairs,
    meanScore,
    words: roleWords(colours, roles),
  };
}

type Roles = Pick<Relations, 'dominant' | 'foil' | 'accent'>;

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

function roleWords(colours: readonly Related[], { dominant, foil, accent }: Roles): string {
  const name = (i: number) => colours[i]!.name;
  const said = [`The ${name(dominant)} is dominant`];
  if (foil !== null) said.push(`the ${name(foil)} is its foil`);
  if (accent !== null) said.push(`the ${name(accent)} is the accent`);
  return `${said.join(', ')}.`;
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
  return { warm, cool, neither, measure, words: balanceWords(warm, cool) };
}

function balanceWords(warm: number, cool: number): string {
  if (warm + cool < 0.2) return 'mostly neither warm nor cool';
  if (cool < 0.02) return 'warm throughout';
  if (warm < 0.02) return 'cool throughout';
  if (warm > 3 * cool) return 'warm, with a cool note';
  if (cool > 3 * warm) return 'cool, with a warm note';
  if (warm > 1.4 * cool) return 'more warm than cool';
  if (cool > 1.4 * warm) return 'more cool than warm';
  return 'warm and cool in balance';
}

function relation(colours: readonly Related[], i: number, j: number): Relation {
  const [x, y] = [colours[i]!, colours[j]!];
  return {
    of: i,
    beside: j,
    lightness: lightness(x, y),
    chroma: purity(x, y),
    hue: hue(x, y),
    score: pairHarmony(x.lab, y.lab),
    period: periodOf(x.lab, y.lab, [x.declared ?? null, y.declared ?? null]),
  };
}
