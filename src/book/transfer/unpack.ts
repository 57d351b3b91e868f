import { type UnzipFileInfo, unzipSync } from 'fflate';
import * as v from 'valibot';
import { fail, ok, type Result } from '../../result.ts';
import type { BookFault } from '../schema/book-fault.ts';
import { type Subtle, sha256 } from '../schema/digest.ts';
import { summaryOfEntry } from '../schema/entry-summary.ts';
import { type AnyRecord, filesOf, readRecord } from '../schema/record.ts';
import { BookFaultError, type StoredFile } from '../store/database.ts';
import { withoutMetadata } from '../store/jpeg-metadata.ts';
import {
  type CancelAndProgress,
  type CopyFile,
  INDEX,
  indexSchema,
  KNOWN_NAME,
  LIMITS,
  pathInCopy,
  SEAL,
  sealSchema,
  TYPE_OF,
  VERSION,
} from './copy-format.ts';

/** The checked contents of a copy, not yet imported. */
export interface Copy {
  readonly made: string;
  readonly records: readonly AnyRecord[];
  readonly files: ReadonlyMap<string, StoredFile>;
  /** Keyed by the file id of the photograph. */
  readonly thumbnails: ReadonlyMap<string, StoredFile>;
}

/**
 * Opens a copy and validates it completely: sizes before anything is inflated, paths against the
 * known ones, the index against the seal, files against the index, entries against their schema.
 * Runs in a worker or on the main thread.
 * @returns one of the faults `not-a-copy`, `copy-damaged`, `copy-newer`, `copy-too-large`,
 *   `copy-unsound`, or `stopped` after an abort
 */
export async function openCopy(
  bytes: Uint8Array<ArrayBuffer>,
  running: CancelAndProgress & { readonly subtle: Subtle },
): Promise<Result<Copy, BookFault>> {
  try {
    return ok(await unpack(bytes, running));
  } catch (error) {
    if (error instanceof BookFaultError) return fail(error.fault);
    throw error;
  }
}

const refuse = (fault: BookFault): never => {
  throw new BookFaultError(fault);
};
const damaged = (where: string): never => refuse({ code: 'copy-damaged', where });

async function unpack(
  bytes: Uint8Array<ArrayBuffer>,
  { subtle, signal, onProgress }: CancelAndProgress & { readonly subtle: Subtle },
): Promise<Copy> {
  const contents = inflate(bytes);
  const seal = readSeal(contents.get(SEAL));
  const index = contents.get(INDEX) ?? damaged(INDEX);
  if ((await sha256(subtle, bufferOf(index))) !== seal.sha256) damaged(INDEX);
  const { made, files: listed, records: raw } = readIndex(index);

  const files = new Map<string, StoredFile>();
  const thumbnails = new Map<string, StoredFile>();
  for (const [i, file] of listed.entries()) {
    if (signal?.aborted) refuse({ code: 'stopped' });
    onProgress?.(i / listed.length);
    const stored = await checked(file, contents.get(pathInCopy(file.role, file.id)), subtle);
    const into = file.role === 'thumbnail' ? thumbnails : files;
    if (into.has(stored.id)) refuse({ code: 'copy-unsound', where: [`file ${stored.id} twice`] });
    into.set(stored.id, stored);
  }
  const records = readRecords(raw, files);
  onProgress?.(1);
  return { made, records, files, thumbnails };
}

/**
 * Inflates the known files of a zip, by path. Adds up the declared sizes before anything is
 * inflated.
 */
function inflate(bytes: Uint8Array<ArrayBuffer>): Map<string, Uint8Array<ArrayBuffer>> {
  if (bytes.length > LIMITS.bytes) refuse({ code: 'copy-too-large' });
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) refuse({ code: 'not-a-copy' });
  const seen = new Set<string>();
  let entries = 0;
  let total = 0;
  const filter = ({ name, size, originalSize, compression }: UnzipFileInfo): boolean => {
    if (++entries > LIMITS.entries + 100) refuse({ code: 'copy-too-large' });
    if (!KNOWN_NAME.test(name)) return false;
    if (seen.has(name)) damaged(name);
    seen.add(name);
    total += originalSize;
    const most =
      name === SEAL ? LIMITS.sealBytes : name === INDEX ? LIMITS.indexBytes : LIMITS.bytes;
    if (originalSize > most || total > LIMITS.bytes) refuse({ code: 'copy-too-large' });
    // Photographs are stored uncompressed: a deflated one is not from Kingcup and may be a zip
    // bomb.
    const isText = name === SEAL || name === INDEX;
    if (compression !== 0 && !(isText && compression === 8)) damaged(name);
    if (compression === 0 && size !== originalSize) damaged(name);
    return true;
  };
  let unzipped: Record<string, Uint8Array> = {};
  try {
    unzipped = unzipSync(bytes, { filter });
  } catch (error) {
    if (error instanceof BookFaultError) throw error;
    damaged('zip');
  }
  return new Map(Object.entries(unzipped) as [string, Uint8Array<ArrayBuffer>][]);
}

function readSeal(content: Uint8Array | undefined): v.InferOutput<typeof sealSchema> {
  if (!content) return refuse({ code: 'not-a-copy' });
  const raw = parse(content, SEAL);
  if (isNewer(raw)) refuse({ code: 'copy-newer' });
  const seal = v.safeParse(sealSchema, raw);
  return seal.success ? seal.output : refuse({ code: 'not-a-copy' });
}

function readIndex(content: Uint8Array): v.InferOutput<typeof indexSchema> {
  const index = v.safeParse(indexSchema, parse(content, INDEX));
  if (index.success) return index.output;
  const where = index.issues.map((issue) => v.getDotPath(issue) ?? INDEX);
  return refuse({ code: 'copy-unsound', where: where.slice(0, 20) });
}

const isNewer = (raw: unknown): boolean =>
  typeof raw === 'object' &&
  raw !== null &&
  'version' in raw &&
  typeof raw.version === 'number' &&
  raw.version > VERSION;

function parse(content: Uint8Array, name: string): unknown {
  if (depthOf(content) > LIMITS.depth) damaged(name);
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(content));
  } catch {
    return damaged(name);
  }
}

/**
 * Maximum nesting depth of brackets outside strings. Checked before parsing, because deep nesting
 * can overflow the stack.
 */
function depthOf(json: Uint8Array): number {
  const [QUOTE, BACKSLASH] = [0x22, 0x5c];
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let i = 0; i < json.length; i++) {
    const byte = json[i];
    if (inText) {
      if (byte === BACKSLASH) i++;
      else if (byte === QUOTE) inText = false;
    } else if (byte === QUOTE) inText = true;
    else if (byte === 0x5b || byte === 0x7b) deepest = Math.max(deepest, ++depth);
    else if (byte === 0x5d || byte === 0x7d) depth--;
  }
  return deepest;
}

async function checked(
  { role, id, sha256: hash, size }: CopyFile,
  content: Uint8Array<ArrayBuffer> | undefined,
  subtle: Subtle,
): Promise<StoredFile> {
  const name = pathInCopy(role, id);
  if (!content || content.length !== size) return damaged(name);
  const bytes = bufferOf(content);
  if ((await sha256(subtle, bytes)) !== hash) damaged(name);
  if (role !== 'thumbnail' && id !== hash) damaged(name);
  // A photograph with metadata cannot come from a book.
  if (role !== 'map' && withoutMetadata(bytes)?.byteLength !== bytes.byteLength)
    refuse({ code: 'copy-unsound', where: [name] });
  return { id, type: TYPE_OF[role], bytes };
}

/**
 * Validates all entries: each has a valid schema, a unique id and all its files. Reports up to 20
 * errors.
 */
function readRecords(
  raw: readonly unknown[],
  files: ReadonlyMap<string, StoredFile>,
): readonly AnyRecord[] {
  const records: AnyRecord[] = [];
  const ids = new Set<string>();
  const wrong: string[] = [];
  for (const [i, one] of raw.entries()) {
    const read = readRecord(one);
    if (!read.ok) {
      if (read.fault.code === 'newer-record') refuse({ code: 'copy-newer' });
      wrong.push(`records.${i} ${read.fault.code === 'bad-record' ? read.fault.where : ''}`.trim());
      continue;
    }
    const record = read.value;
    if (ids.has(record.id)) wrong.push(`records.${i} twice`);
    ids.add(record.id);
    for (const { file, size } of filesOf(record))
      if (files.get(file)?.bytes.byteLength !== size) wrong.push(`records.${i} file ${file}`);
    const picture = summaryOfEntry(record)?.picture;
    if (picture !== undefined && files.get(picture)?.type !== TYPE_OF.photograph)
      wrong.push(`records.${i} picture`);
    records.push(record);
  }
  return wrong.length > 0 ? refuse({ code: 'copy-unsound', where: wrong.slice(0, 20) }) : records;
}

/** The bytes as a buffer of their own, not a view into the whole zip. */
const bufferOf = (content: Uint8Array<ArrayBuffer>): ArrayBuffer =>
  content.byteLength === content.buffer.byteLength ? content.buffer : content.slice().buffer;
