import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { fail, ok, type Result } from '../../result.ts';
import type { BookFault } from '../schema/book-fault.ts';
import { type Subtle, sha256 } from '../schema/digest.ts';
import { type AnyRecord, filesOf } from '../schema/record.ts';
import type { StoredFile } from '../store/database.ts';
import {
  type CancelAndProgress,
  type CopyFile,
  FORMAT,
  INDEX,
  LIMITS,
  pathInCopy,
  type Role,
  SEAL,
  TYPE_OF,
  VERSION,
} from './copy-format.ts';

/** Supplies the contents of a copy, one file at a time. */
interface CopySource {
  readonly records: readonly AnyRecord[];
  file(id: string): Promise<StoredFile | null>;
  thumbnail(id: string): Promise<StoredFile | null>;
}
export interface Packed {
  readonly entries: number;
  readonly bytes: number;
  /** Ids of entries that were left out because the book no longer has their photograph or map. */
  readonly leftOut: readonly string[];
}

/**
 * Packs a copy as a zip stream, so that only one photograph is in memory at a time.
 * @param made ISO date and time
 * @param sink receives the bytes of the zip in order; it must not change them
 * @returns the fault `stopped` after an abort, `book-too-large` when the copy exceeds LIMITS
 */
export async function packCopy(
  source: CopySource,
  sink: (piece: Uint8Array<ArrayBuffer>) => void,
  {
    subtle,
    made,
    signal,
    onProgress,
  }: CancelAndProgress & { readonly subtle: Subtle; readonly made: string },
): Promise<Result<Packed, BookFault>> {
  let bytes = 0;
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    bytes += piece.length;
    sink(piece as Uint8Array<ArrayBuffer>);
  });
  const files: CopyFile[] = [];
  const packed = new Set<string>();
  const missing = new Set<string>();

  const add = async (role: Role, id: string, stored: StoredFile) => {
    const content = new Uint8Array(stored.bytes);
    const hash = role === 'thumbnail' ? await sha256(subtle, stored.bytes) : id;
    files.push({ role, id, sha256: hash, size: content.length });
    const entry = new ZipPassThrough(pathInCopy(role, id));
    entry.mtime = made;
    zip.add(entry);
    entry.push(content, true);
  };

  const wanted = source.records.flatMap((record) => filesOf(record).map(({ file }) => file));
  for (const [i, id] of wanted.entries()) {
    if (signal?.aborted) return fail({ code: 'stopped' });
    onProgress?.(i / (wanted.length + 1));
    if (packed.has(id) || missing.has(id)) continue;
    const stored = await source.file(id);
    if (!stored) {
      missing.add(id);
      continue;
    }
    packed.add(id);
    const isPhotograph = stored.type === TYPE_OF.photograph;
    await add(isPhotograph ? 'photograph' : 'map', id, stored);
    const thumbnail = isPhotograph ? await source.thumbnail(id) : null;
    if (thumbnail) await add('thumbnail', id, thumbnail);
    if (bytes > LIMITS.bytes || files.length > LIMITS.entries)
      return fail({ code: 'book-too-large' });
  }

  const isWhole = (record: AnyRecord) => filesOf(record).every(({ file }) => packed.has(file));
  const records = source.records.filter(isWhole);
  const index = encoded({ format: FORMAT, version: VERSION, made, files, records });
  if (index.length > LIMITS.indexBytes) return fail({ code: 'book-too-large' });
  const seal = { format: FORMAT, version: VERSION, sha256: await sha256(subtle, index.buffer) };
  if (signal?.aborted) return fail({ code: 'stopped' });
  for (const [name, content] of [
    [INDEX, index],
    [SEAL, encoded(seal)],
  ] as const) {
    const entry = new ZipDeflate(name);
    entry.mtime = made;
    zip.add(entry);
    entry.push(content, true);
  }
  zip.end();
  onProgress?.(1);
  const leftOut = source.records.filter((record) => !isWhole(record)).map(({ id }) => id);
  return ok({ entries: records.length, bytes, leftOut });
}

/**
 * Splits the entries of a book into volumes that each fit into one copy; most books need one.
 * Importing all volumes, in any order, restores the whole book.
 * @param most bytes of photographs and maps in one copy
 * @returns the ids of each volume's entries
 */
export function archiveVolumes(
  records: readonly AnyRecord[],
  most: number = LIMITS.bytes * 0.8,
): readonly (readonly string[])[] {
  const volumes: string[][] = [[]];
  let held = 0;
  for (const record of records) {
    const needed = filesOf(record).reduce((sum, { size }) => sum + size, 0) + ROOM;
    if (held + needed > most && held > 0) {
      volumes.push([]);
      held = 0;
    }
    volumes.at(-1)!.push(record.id);
    held += needed;
  }
  return volumes;
}
/** Bytes to allow for an entry and its thumbnail besides its files; a generous estimate. */
const ROOM = 60_000;

const encoded = (value: unknown): Uint8Array<ArrayBuffer> =>
  new Uint8Array(new TextEncoder().encode(JSON.stringify(value)));
