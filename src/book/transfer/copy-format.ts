import * as v from 'valibot';
import { FILE_FORM } from '../schema/fields.ts';

/**
 * Format of a book copy: a zip of
 *
 *   kingcup.json                the seal: format, version, and the hash of the index
 *   book.json                   the index: every entry, and every file with its hash
 *   photographs/<sha-256>.jpg   stored, not deflated
 *   maps/<sha-256>.bin          masks and label maps, stored
 *   thumbnails/<sha-256 of the photograph>.jpg
 *
 * All hashes are SHA-256, hexadecimal. The index holds the entries as stored in the book, including
 * purged ones: a merge must know what was deleted.
 */
export const FORMAT = 'kingcup-book';
export const VERSION = 1;
export const SEAL = 'kingcup.json';
export const INDEX = 'book.json';

const MB = 1024 * 1024;
/** Limits of one import; a larger book is copied in several volumes. */
export const LIMITS = {
  /** Of the zip, and of the total size that it declares uncompressed. */
  bytes: 1024 * MB,
  indexBytes: 256 * MB,
  sealBytes: 4096,
  entries: 60_000,
  /** Nesting depth of the index; the entries need fewer than 20. */
  depth: 40,
} as const;

const FOLDERS = { photograph: 'photographs', map: 'maps', thumbnail: 'thumbnails' } as const;
export type Role = keyof typeof FOLDERS;
export const TYPE_OF = {
  photograph: 'image/jpeg',
  map: 'application/octet-stream',
  thumbnail: 'image/jpeg',
} as const satisfies Record<Role, string>;

/** The only path that a file of a copy may have. */
export const pathInCopy = (role: Role, id: string): string =>
  `${FOLDERS[role]}/${id}.${role === 'map' ? 'bin' : 'jpg'}`;

/** Paths that an import reads; it ignores all others. */
export const KNOWN_NAME =
  /^(?:kingcup\.json|book\.json|(?:photographs|thumbnails)\/[0-9a-f]{64}\.jpg|maps\/[0-9a-f]{64}\.bin)$/;

const hash = v.pipe(v.string(), v.regex(FILE_FORM));
const size = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(LIMITS.bytes));

export const sealSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  sha256: hash,
});

/** One file of a copy. `id` is the file's own hash, or for a thumbnail that of its photograph. */
const fileSchema = v.strictObject({
  role: v.picklist(['photograph', 'map', 'thumbnail']),
  id: hash,
  sha256: hash,
  size,
});
export type CopyFile = v.InferOutput<typeof fileSchema>;

export const indexSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  made: v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/)),
  files: v.pipe(v.array(fileSchema), v.maxLength(LIMITS.entries)),
  records: v.pipe(v.array(v.unknown()), v.maxLength(LIMITS.entries * 4)),
});

/** Cancellation and progress of a long operation. */
export interface CancelAndProgress {
  readonly signal?: AbortSignal;
  /** Called with the completed fraction, 0…1. */
  readonly onProgress?: (done: number) => void;
}
