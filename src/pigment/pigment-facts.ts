import figures from './data/figures.json' with { type: 'json' };
import sentences from './data/words.json' with { type: 'json' };

/**
 * Provenance of a figure. It applies to the value; the ends of its range may have other sources.
 */
export type Provenance = 'seen' | 'seen2' | 'calc' | 'mem' | 'est' | 'common practice';

/** Provenance in words for the user. */
export const PROVENANCE_WORDS = {
  seen: 'read in the source named',
  seen2: 'read in a later text that reports it',
  calc: 'worked out from figures that were read',
  mem: 'from memory of a handbook: check it',
  est: 'an estimate without a source: measure your own lot',
  'common practice': 'common practice in studios, with no published source',
} as const satisfies Record<Provenance, string>;

export interface Figure {
  /** The default for computations. */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly status: Provenance;
  readonly source: string;
}

export type PigmentFamily = 'white' | 'yellow' | 'red' | 'blue' | 'green' | 'brown' | 'black';
export type HazardLevel = 'low' | 'caution' | 'toxic' | 'very_toxic';
export type Opacity = 'transparent' | 'semi-transparent' | 'semi-opaque' | 'opaque';
export type Strength = 'very low' | 'low' | 'medium' | 'high' | 'very high';
export type Drying = 'fast' | 'medium' | 'slow' | 'very slow';

/** Handbook facts of one pigment. Densities in g/cm3, oil in grams per 100 g of dry pigment. */
export interface PigmentFacts {
  readonly id: string;
  readonly name: string;
  readonly synonyms: readonly string[];
  readonly family: PigmentFamily;
  readonly group: 'period' | 'later' | 'modern' | 'standin';
  readonly colourIndex: {
    readonly name: string | null;
    readonly number: string;
    readonly status: Provenance;
  };
  readonly chemistry: string;
  /** null if unknown: the pigment cannot be weighed as oil paint. */
  readonly density: Figure | null;
  readonly oil: Figure | null;
  /** Index of refraction. */
  readonly index: Omit<Figure, 'value' | 'source'> | null;
  readonly opacity: { readonly word: Opacity | null; readonly status: Provenance };
  readonly strength: { readonly word: Strength; readonly status: Provenance };
  readonly drying: { readonly word: Drying | null; readonly status: Provenance };
  readonly lightfast: {
    /** ASTM D4302/D4303 class I-III, or `unlisted`, or `unlisted, fugitive`. */
    readonly class: string;
    readonly note: string;
    readonly status: Provenance;
  };
  readonly hazard: {
    readonly level: HazardLevel;
    readonly sentence: string;
    readonly caution: string;
    readonly status: Provenance;
  };
  /**
   * Ids of pigments that must not be combined with it in a pile, in touching layers or on a slab.
   */
  readonly avoid: readonly string[];
  /** Ids of pigments that may be combined with it after a warning. */
  readonly careWith: readonly string[];
  readonly mixing: { readonly note: string; readonly status: Provenance };
  readonly hue: string;
  readonly use: string;
  readonly used: { readonly from: string; readonly to: string };
  /** Colour-index names, `+` for a mixture of two. */
  readonly standIns: { readonly names: readonly string[]; readonly status: Provenance };
  /** How its built-in K and S were derived; null without a curve. */
  readonly curve: string | null;
}

type FigureRow = (typeof figures.pigments)[number];
type Words = (typeof sentences.pigments)[keyof typeof sentences.pigments];

function joinFacts(row: FigureRow): PigmentFacts {
  const words = (sentences.pigments as Record<string, Words>)[row.id];
  if (words === undefined) throw new RangeError(`no sentences for ${row.id}`);
  const figure = (
    given: { value: number; min: number; max: number; status: string } | null,
    source: string | null,
  ): Figure | null =>
    given === null ? null : { ...given, status: given.status as Provenance, source: source ?? '' };
  return {
    ...(row as unknown as PigmentFacts),
    chemistry: words.chemistry,
    density: figure(row.density, words.densitySource),
    oil: figure(row.oil, words.oilSource),
    lightfast: { ...row.lightfast, note: words.light, status: row.lightfast.status as Provenance },
    hazard: {
      level: row.hazard.level as HazardLevel,
      sentence: (sentences.hazards as Record<string, string>)[words.hazard]!,
      caution: (sentences.cautions as Record<string, string>)[words.caution]!,
      status: row.hazard.status as Provenance,
    },
    mixing: { note: words.mixing, status: words.mixingStatus as Provenance },
    hue: words.hue,
    use: words.use,
    curve: words.curve,
  };
}

/** All pigments of data/figures.json, in its order. */
export const PIGMENTS: readonly PigmentFacts[] = figures.pigments.map(joinFacts);
const BY_ID = new Map(PIGMENTS.map((facts) => [facts.id, facts]));

/** Facts of a pigment id; null for an unknown id. */
export const pigmentOf = (id: string): PigmentFacts | null => BY_ID.get(id) ?? null;

/** Modern pigments that can replace a period pigment. */
export function standInsOf(id: string): readonly PigmentFacts[] {
  const names = pigmentOf(id)?.standIns.names ?? [];
  return PIGMENTS.filter(
    ({ group, colourIndex }) =>
      (group === 'standin' || group === 'modern') &&
      colourIndex.name !== null &&
      names.includes(colourIndex.name),
  );
}

/** Warning about two pigments in one pile, on one slab or in touching layers. */
export type PairWarning = {
  readonly severity: 'avoid' | 'caution';
  readonly why: readonly string[];
};

/** The warning about a pair of pigment ids; null if there is none. Symmetric. */
export function pairWarningOf(id: string, other: string): PairWarning | null {
  const [one, two] = [pigmentOf(id), pigmentOf(other)];
  if (one === null || two === null || id === other) return null;
  const said = (list: (facts: PigmentFacts) => readonly string[]) =>
    list(one).includes(other) || list(two).includes(id);
  const severity = said((f) => f.avoid) ? 'avoid' : said((f) => f.careWith) ? 'caution' : null;
  if (severity === null) return null;
  return { severity, why: [...new Set([one.mixing.note, two.mixing.note])] };
}
