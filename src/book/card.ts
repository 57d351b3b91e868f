import type { Lab } from '../colour/lab.ts';
import type { HarmonyColour } from './harmony.ts';
import { type AnyRecord, type Entry, filesOf, hasBody, type Kind } from './record.ts';

/** What a list needs of an entry: small, kept beside it, written in the same transaction. */
export interface Card {
  readonly id: string;
  readonly kind: Kind;
  readonly name: string;
  /** Every word of the entry, lower case: what a search by word looks through. */
  readonly words: string;
  /** ISO day or date that the entry is about. */
  readonly date: string;
  readonly changed: string;
  readonly deletedAt?: string;
  readonly colours: readonly { readonly lab: Lab; readonly share: number }[];
  /** Pigments of the mixtures chosen. */
  readonly pigments: readonly string[];
  /** The photographs and maps that it needs. */
  readonly files: readonly string[];
  /** File of the photograph whose thumbnail stands for it. */
  readonly picture?: string;
  /** The specimen whose photograph stands for it. */
  readonly specimen?: string;
  /** Kept beside another entry after two devices changed the same one. */
  readonly conflictOf?: string;
}

/** The card of an entry; null for one that was purged. */
export function cardOf(record: AnyRecord): Card | null {
  if (!hasBody(record)) return null;
  const { id, kind, changed } = record;
  return {
    id,
    kind,
    changed,
    files: filesOf(record).map(({ file }) => file),
    ...(record.deletedAt === undefined ? {} : { deletedAt: record.deletedAt }),
    ...(record.conflict === undefined ? {} : { conflictOf: record.conflict.of }),
    ...contentsOf(record),
  };
}

type Contents = Pick<
  Card,
  'name' | 'words' | 'date' | 'colours' | 'pigments' | 'picture' | 'specimen'
>;

function contentsOf(record: Entry): Contents {
  switch (record.kind) {
    case 'specimen': {
      const { body } = record;
      const colours = body.gathered?.colours ?? [];
      return {
        name: body.name,
        words: lower([body.name, body.note, body.light, body.place, body.walk, ...names(colours)]),
        date: body.date,
        colours: colours.map(({ lab, share }) => ({ lab, share })),
        pigments: [],
        picture: body.photo.file,
      };
    }
    case 'harmony': {
      const { body } = record;
      const pigments = [...new Set(body.colours.flatMap(pigmentsOf))];
      return {
        name: body.name,
        words: lower([body.name, body.note, ...names(body.colours), ...pigments]),
        date: body.date,
        colours: body.colours.map(({ lab, share }) => ({ lab, share })),
        pigments,
        ...(body.specimen === null ? {} : { specimen: body.specimen }),
      };
    }
  }
}

const names = (colours: readonly { readonly name: string }[]) => colours.map(({ name }) => name);
const lower = (texts: readonly string[]) => texts.filter(Boolean).join('\n').toLowerCase();
const pigmentsOf = ({ mixture }: HarmonyColour): readonly string[] =>
  mixture ? mixture.parts.filter(({ parts }) => parts > 0).map(({ pigment }) => pigment) : [];
