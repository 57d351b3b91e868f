import * as v from 'valibot';
import { FILE_FORM } from './fields.ts';

/**
 * The form of a book copy: a zip of
 *
 *   kingcup.json                the seal: format, version, and the hash of the index
 *   book.json                   the index: every entry, and every file with its hash
 *   photographs/<sha-256>.jpg   stored, not deflated
 *   maps/<sha-256>.bin          masks and label maps, stored
 *   thumbnails/<sha-256 of the photograph>.jpg
 *
 * All hashes are SHA-256, hexadecimal. The index has the entries as the book keeps them, purged ones
 * too: a merge must know what was deleted.
 */
export const FORMAT = 'kingcup-book';
export const VERSION = 1;
export const SEAL = 'kingcup.json';
export const INDEX = 'book.json';

const MB = 1024 * 1024;
/** What an import takes on at once; a larger book is copied in several. */
export const LIMITS = {
  /** Of the zip, and of all that it says it holds. */
  bytes: 1024 * MB,
  indexBytes: 256 * MB,
  sealBytes: 4096,
  entries: 60_000,
  /** Nested brackets in the index: the entries need fewer than 20. */
  depth: 40,
} as const;

export const FOLDERS = { photograph: 'photographs', map: 'maps', thumbnail: 'thumbnails' } as const;
export type Role = keyof typeof FOLDERS;
export const TYPE_OF = {
  photograph: 'image/jpeg',
  map: 'application/octet-stream',
  thumbnail: 'image/jpeg',
} as const satisfies Record<Role, string>;

/** The only name that a file of a copy may have. */
export const nameOf = (role: Role, id: string): string =>
  `${FOLDERS[role]}/${id}.${role === 'map' ? 'bin' : 'jpg'}`;

/** Names that are looked at; anything else in a zip is passed over. */
export const KNOWN_NAME =
  /^(?:kingcup\.json|book\.json|(?:photographs|thumbnails)\/[0-9a-f]{64}\.jpg|maps\/[0-9a-f]{64}\.bin)$/;

const hash = v.pipe(v.string(), v.regex(FILE_FORM));
const size = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(LIMITS.bytes));

export const sealSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  sha256: hash,
});

/** One file of a copy; `id` is its own hash, or for a thumbnail the photograph's. */
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

/** What running work tells and hears. */
export interface Running {
  readonly signal?: AbortSignal;
  /** 0…1. */
  readonly onProgress?: (done: number) => void;
}
