import type { MergePreview } from '../src/book/merge/merge-books.ts';
import type { BookFault } from '../src/book/schema/book-fault.ts';
import { type EntrySummary, summaryOfEntry } from '../src/book/schema/entry-summary.ts';
import type { AnyRecord } from '../src/book/schema/record.ts';
import { type Book, openBook, type Undo } from '../src/book/store/open-book.ts';
import { importCopy, makeCopy, planCopies, previewCopy } from '../src/book/transfer/copies.ts';
import { LIMITS } from '../src/book/transfer/copy-format.ts';
import { type Copy, openCopy } from '../src/book/transfer/unpack.ts';
import { fail, ok, type Result } from '../src/result.ts';
import type { JobResult } from './job-protocol.ts';

/**
 * Requests of the page, in this order: plan and make; or look (preview), bring (import), perhaps
 * take back (undo).
 */
export type CopyJob =
  | { readonly kind: 'plan' }
  | {
      readonly kind: 'make';
      readonly ids?: readonly string[];
      readonly volume?: readonly string[];
    }
  | { readonly kind: 'look'; readonly file: Blob }
  | { readonly kind: 'bring' }
  | { readonly kind: 'stop' }
  | { readonly kind: 'take back' };
/** Progress, 0…1. */
export type CopyNews = number;

/** A finished copy of the book. */
export interface Made {
  readonly file: Blob;
  readonly entries: number;
  /** Entries that the book could not read. */
  readonly leftOut: readonly string[];
  /** ISO date and time. */
  readonly made: string;
}

/** Count of entries, and the first few for display. */
export interface Several {
  readonly count: number;
  readonly first: readonly EntrySummary[];
}
/** Effect of an import, before or after it. */
export interface ImportEffect {
  readonly added: Several;
  readonly changed: Several;
  readonly deleted: Several;
  readonly kept: Several;
  readonly settled: Several;
  readonly same: number;
}
export interface ImportPreview extends ImportEffect {
  /** ISO date and time. */
  readonly made: string;
}

export type CopyAnswer =
  | {
      readonly kind: 'plan';
      readonly result: Result<readonly (readonly string[])[], BookFault>;
    }
  | { readonly kind: 'make'; readonly result: Result<Made, BookFault> }
  | { readonly kind: 'look'; readonly result: Result<ImportPreview, BookFault> }
  | { readonly kind: 'bring'; readonly result: Result<ImportEffect, BookFault> }
  | { readonly kind: 'stop'; readonly result: Result<null, BookFault> }
  | { readonly kind: 'take back'; readonly result: Result<null, BookFault> };

/** Entries of each kind shown before an import. */
const SHOWN = 60;

/**
 * Makes and imports copies in a worker. The previewed copy stays in memory until it is imported.
 * @returns the job function, with its own state
 */
export function copyJobs(): (
  job: CopyJob,
  tell: (news: CopyNews) => void,
) => Promise<JobResult<CopyAnswer>> {
  let opened: Promise<Result<Book, BookFault>> | null = null;
  let copy: Copy | null = null;
  let undo: Undo | null = null;
  let stopping = new AbortController();

  const withBook = async <T>(work: (book: Book) => Promise<Result<T, BookFault>>) => {
    opened ??= openBook();
    const book = await opened;
    if (!book.ok) return book;
    try {
      return await work(book.value);
    } finally {
      // The page may terminate this thread at any time.
      await book.value.clearLogMark();
    }
  };

  const look = (file: Blob, onProgress: (done: number) => void) =>
    withBook<ImportPreview>(async (book) => {
      if (file.size > LIMITS.bytes) return fail({ code: 'copy-too-large' });
      const found = await openCopy(new Uint8Array(await file.arrayBuffer()), {
        subtle: crypto.subtle,
        onProgress,
      });
      if (!found.ok) return found;
      const preview = await previewCopy(book, found.value);
      if (!preview.ok) return preview;
      copy = found.value;
      return ok({ made: copy.made, ...counted(preview.value) });
    });

  const bring = (onProgress: (done: number) => void) =>
    withBook<ImportEffect>(async (book) => {
      if (!copy) return fail({ code: 'stopped' });
      stopping = new AbortController();
      const { signal } = stopping;
      const imported = await importCopy(book, copy, { signal, onProgress });
      if (!imported.ok) return imported;
      copy = null;
      undo = imported.value.undo;
      return ok(counted(imported.value));
    });

  return async (job, tell) => {
    const onProgress = inHundredths(tell);
    switch (job.kind) {
      case 'plan':
        return { value: { kind: 'plan', result: await withBook(planCopies) } };
      case 'make': {
        const result = await withBook<Made>(async (book) => {
          const { kind: _, ...which } = job;
          const made = await makeCopy(book, { ...which, nowMs: Date.now(), onProgress });
          if (!made.ok) return made;
          const { pieces, entries, leftOut, made: at } = made.value;
          const file = new Blob([...pieces], { type: 'application/zip' });
          return ok({ file, entries, leftOut, made: at });
        });
        return { value: { kind: 'make', result } };
      }
      case 'look':
        return { value: { kind: 'look', result: await look(job.file, onProgress) } };
      case 'bring':
        return { value: { kind: 'bring', result: await bring(onProgress) } };
      case 'stop':
        // The import's own answer says whether it was stopped or had already ended.
        stopping.abort();
        return { value: { kind: 'stop', result: ok(null) } };
      case 'take back':
        return {
          value: {
            kind: 'take back',
            result: undo ? await undo() : fail({ code: 'not-found' }),
          },
        };
    }
  };
}

/** Reports progress at most once per hundredth. */
function inHundredths(tell: (done: number) => void): (done: number) => void {
  let last = -1;
  return (done) => {
    const now = Math.floor(done * 100);
    if (now === last) return;
    last = now;
    tell(done);
  };
}

const counted = (preview: MergePreview): ImportEffect => ({
  added: several(preview.added),
  changed: several(preview.changed),
  deleted: several(preview.deleted),
  kept: several(preview.kept),
  settled: several(preview.settled),
  same: preview.same,
});

const several = (records: readonly AnyRecord[]): Several => ({
  count: records.length,
  first: records.slice(0, SHOWN).flatMap((record) => summaryOfEntry(record) ?? []),
});
