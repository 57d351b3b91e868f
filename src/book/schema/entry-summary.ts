import { spectrum } from '../../colour/grid.ts';
import { type Lab, labOf } from '../../colour/lab.ts';
import type { Mixture } from '../../mixture/mixture-types.ts';
import { mixtureVolumesOf, pilePartsOf } from '../../mixture/pile-parts.ts';
import { labelOf } from '../../pigment/stock-label.ts';
import { foldText } from './fold-text.ts';
import { type AnyRecord, type Entry, filesOf, hasBody, type Kind } from './record.ts';

/**
 * Summary of an entry for lists and search: small, stored beside the entry and written in the same
 * transaction.
 */
export interface EntrySummary {
  readonly id: string;
  readonly kind: Kind;
  readonly name: string;
  /** All searchable text of the entry, case-folded and without accents. */
  readonly words: string;
  /** ISO date, or date and time, of what the entry describes. */
  readonly date: string;
  readonly changed: string;
  readonly deletedAt?: string;
  readonly colours: readonly { readonly lab: Lab; readonly share: number }[];
  /** Pigments of the chosen mixtures, without duplicates. */
  readonly pigments: readonly string[];
  /** Ids of the photographs, masks and label maps that the entry needs. */
  readonly files: readonly string[];
  /** File id of the photograph whose thumbnail represents the entry. */
  readonly picture?: string;
  /** Id of the specimen whose photograph represents the entry. */
  readonly specimen?: string;
  /** Id of the entry that this unresolved conflict copy belongs to. */
  readonly conflictOf?: string;
}

/** Builds the summary of an entry. Returns null for a purged entry, which has no contents. */
export function summaryOfEntry(record: AnyRecord): EntrySummary | null {
  if (!hasBody(record)) return null;
  const { id, kind, changed } = record;
  return {
    id,
    kind,
    changed,
    files: filesOf(record).map(({ file }) => file),
    ...(record.deletedAt === undefined ? {} : { deletedAt: record.deletedAt }),
    ...(record.conflict && !record.conflict.settled ? { conflictOf: record.conflict.of } : {}),
    ...contentsOf(record),
  };
}

type Contents = Pick<EntrySummary, 'name' | 'words' | 'date' | 'colours' | 'pigments'> &
  Partial<Pick<EntrySummary, 'picture' | 'specimen'>>;
type Shown = EntrySummary['colours'][number];

/** The listed contents of each kind. An entry that has only mixtures shows their colours. */
function contentsOf(record: Entry): Contents {
  switch (record.kind) {
    case 'specimen': {
      const { photo, gathered, light, place, walk } = record.body;
      const colours = gathered?.colours ?? [];
      const own = [light, place, walk, ...colours.map(({ name }) => name)];
      return { ...contents(record.body, own, shown(colours)), picture: photo.file };
    }
    case 'harmony': {
      const { colours, specimen } = record.body;
      const chosen = colours.flatMap(({ mixture }) => (mixture ? [mixture] : []));
      const own = colours.flatMap(({ name, altered = '' }) => [name, altered]);
      const card = contents(record.body, own, shown(colours), chosen);
      return specimen === null ? card : { ...card, specimen };
    }
    case 'drapery': {
      const { garments } = record.body;
      const folds = garments.flatMap((garment) => garment.folds);
      const own = garments.flatMap(({ name, way, stuff }) => [name, way, stuff]);
      const mixtures = folds.flatMap(({ mixture }) => (mixture ? [mixture] : []));
      return contents(record.body, own, even(folds), mixtures);
    }
    case 'formula': {
      const { subject, passages } = record.body;
      const layers = passages.flatMap((passage) => passage.layers);
      const own = [
        subject,
        ...names(passages),
        ...layers.flatMap(({ film, note }) => [film, note]),
      ];
      return ofMixtures(
        record.body,
        own,
        layers.map(({ mixture }) => mixture),
      );
    }
    case 'passage': {
      const { painting, piles } = record.body;
      const day = record.changed.slice(0, 10);
      const mixtures = piles.map(({ mixture }) => mixture);
      return ofMixtures({ ...record.body, date: day }, [painting, ...names(piles)], mixtures);
    }
    case 'palette': {
      const { piles } = record.body;
      return ofMixtures(
        record.body,
        names(piles),
        piles.map(({ mixture }) => mixture),
      );
    }
    case 'sheet': {
      const pigments = [...new Set(record.body.amounts.map(({ pigment }) => pigment))];
      return { ...contents(record.body, pigments, []), pigments };
    }
    case 'shelf': {
      const { paints, stock } = record.body;
      const own = paints.flatMap(({ pigment, label, grade, lot, note }) => [
        ...[pigment, label, grade, lot, note],
      ]);
      // Paints that are used up or have no curve yet must be found too.
      for (const entry of stock?.entries ?? []) own.push(labelOf(stock!, entry), entry.note);
      const card = contents({ ...record.body, date: record.changed.slice(0, 10) }, own, []);
      return { ...card, pigments: paints.map(({ pigment }) => pigment) };
    }
    case 'swatch': {
      const { pigment, lot, lab, photo } = record.body;
      const card = contents(record.body, [pigment, lot], [{ lab, share: 1 }]);
      const pictured = photo ? { picture: photo.file } : {};
      return { ...card, pigments: [pigment], ...pictured };
    }
    case 'card': {
      const { plan, lots, reading } = record.body;
      const own = [...plan.places.map(({ label }) => label), ...lots.map(({ lot }) => lot)];
      const card = contents(record.body, own, even(reading?.places ?? []));
      return reading?.photo ? { ...card, picture: reading.photo.file } : card;
    }
    case 'curves':
      return contents(
        record.body,
        names(record.body.samples),
        even(record.body.samples.map(({ reflectance }) => ({ lab: labOf(spectrum(reflectance)) }))),
      );
    case 'pile': {
      const { lots, seen, mixture } = record.body;
      const own = lots.map(({ lot }) => lot);
      return contents(record.body, own, [{ lab: seen, share: 1 }], [mixture]);
    }
    case 'leftover':
      return ofMixtures(record.body, [record.body.kept], [record.body.mixture]);
  }
}

interface Headed {
  readonly name: string;
  readonly note: string;
  readonly date: string;
}

function contents(
  { name, note, date }: Headed,
  own: readonly string[],
  colours: readonly Shown[],
  mixtures: readonly Mixture[] = [],
): Contents {
  const pigments = [...new Set(mixtures.flatMap(pigmentsOf))];
  const words = [name, note, ...own, ...pigments].filter(Boolean).join('\n');
  return { name, words: foldText(words), date, colours, pigments };
}

const ofMixtures = (body: Headed, own: readonly string[], mixtures: readonly Mixture[]) =>
  contents(body, own, even(mixtures.map(pilePartsOf)), mixtures);

const shown = (colours: readonly Shown[]): readonly Shown[] =>
  colours.map(({ lab, share }) => ({ lab, share }));
const even = (colours: readonly { readonly lab: Lab }[]): readonly Shown[] =>
  colours.map(({ lab }) => ({ lab, share: 1 / colours.length }));
const names = (things: readonly { readonly name: string }[]) => things.map(({ name }) => name);
const pigmentsOf = (mixture: Mixture): readonly string[] =>
  mixtureVolumesOf(mixture)
    .filter(({ parts }) => parts > 0)
    .map(({ pigment }) => pigment);
