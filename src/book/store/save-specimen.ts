import type { EditedHarmony } from '../../harmony/manual-edits.ts';
import type { NamedLight } from '../../photo/white-balance.ts';
import type { Result } from '../../result.ts';
import type { BookFault } from '../schema/book-fault.ts';
import type { FileRef } from '../schema/fields.ts';
import type { Entry } from '../schema/record.ts';
import type { NeutralSpot, SpecimenBody } from '../schema/specimen.ts';
import type { Book, Put, StoredPicture } from './open-book.ts';

/**
 * Descriptive fields of a specimen. All can be filled in later; none is read from the photograph.
 */
type SpecimenWords = Partial<
  Pick<SpecimenBody, 'name' | 'note' | 'light' | 'place' | 'walk' | 'date'>
>;

/**
 * Saves a photograph as a specimen at once; the words can follow later.
 * @param photograph the re-encoded JPEG, long edge at most 2048 pixels, no EXIF
 * @param thumbnail  a small JPEG of it
 * @param day        ISO date, used unless `words` has one
 */
export async function saveSpecimen(
  book: Book,
  photograph: StoredPicture,
  thumbnail: StoredPicture,
  day: string,
  words: SpecimenWords = {},
): Promise<Result<Put<'specimen'>, BookFault>> {
  const photo = await book.file(photograph);
  if (!photo.ok) return photo;
  const small = await book.file(thumbnail);
  if (!small.ok) return small;
  const empty = { name: '', note: '', light: '', place: '', walk: '', date: day };
  return book.put({
    kind: 'specimen',
    body: { ...empty, ...words, photo: photo.value.ref },
    files: [photo.value],
    thumbnail: { of: photo.value.ref.file, ...small.value.stored },
  });
}

/** A harmony with the sentences on its photograph, as they are stored. */
type StoredGathering = EditedHarmony & { readonly remarks: readonly string[] };

interface GatheredResult {
  readonly gathered: StoredGathering;
  /** Mask, one byte per cell, width × height: 0 rubbed out, 1 kept, 255 transparent. */
  readonly mask?: { readonly width: number; readonly height: number; readonly data: Uint8Array };
  readonly neutral?: NeutralSpot;
  readonly stated?: NamedLight;
}

/** Saves the result gathered from a specimen, so that opening it again computes nothing. */
export async function saveGathering(
  book: Book,
  specimen: Entry<'specimen'>,
  { gathered, mask, neutral, stated }: GatheredResult,
): Promise<Result<Put<'specimen'>, BookFault>> {
  const labels = await book.file(plane(gathered.labels));
  if (!labels.ok) return labels;
  const rubbed = mask ? await book.file(plane(mask)) : null;
  if (rubbed && !rubbed.ok) return rubbed;
  const { gathered: _g, mask: _m, neutral: _n, stated: _s, ...rest } = specimen.body;
  const { width, height, colours, remarks } = gathered;
  return book.put({
    kind: 'specimen',
    id: specimen.id,
    over: specimen,
    body: {
      ...rest,
      ...(neutral ? { neutral } : {}),
      ...(stated ? { stated } : {}),
      ...(rubbed ? { mask: rubbed.value.ref } : {}),
      gathered: { width, height, colours, labels: labels.value.ref, remarks },
    },
    quiet: true,
    files: rubbed ? [labels.value, rubbed.value] : [labels.value],
  });
}

interface Plane {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

const plane = ({ width, height, data }: Plane): StoredPicture => ({
  bytes: new Uint8Array(data).buffer,
  type: 'application/octet-stream',
  width,
  height,
});

/**
 * Reads the complete gathered result from the book. Null when nothing was gathered or the label map
 * is missing.
 */
export async function gatheringOf(book: Book, { body }: Entry<'specimen'>) {
  const { gathered } = body;
  if (!gathered) return null;
  const { labels, ...rest } = gathered;
  const stored = await planeOf(book, labels);
  return stored && ({ ...rest, labels: stored } satisfies StoredGathering);
}

/** Reads the painter's mask from the book. Null when there is none. */
export const maskOf = (book: Book, { body }: Entry<'specimen'>): Promise<Plane | null> =>
  body.mask ? planeOf(book, body.mask) : Promise.resolve(null);

async function planeOf(book: Book, { file, width, height }: FileRef): Promise<Plane | null> {
  const stored = await book.photograph(file);
  return stored.ok ? { width, height, data: new Uint8Array(stored.value.bytes) } : null;
}
