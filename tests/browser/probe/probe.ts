import { sameValue } from '../../../src/book/merge/merge-books.ts';
import { nextVersionMetadata } from '../../../src/book/merge/next-version.ts';
import { sha256 } from '../../../src/book/schema/digest.ts';
import { summaryOfEntry } from '../../../src/book/schema/entry-summary.ts';
import type { HarmonyBody } from '../../../src/book/schema/harmony.ts';
import { type AnyRecord, filesOf, readRecord } from '../../../src/book/schema/record.ts';
import { storeEntry } from '../../../src/book/store/entry-transactions.ts';
import { type Book, openBook, type StoredPicture } from '../../../src/book/store/open-book.ts';
import { saveSpecimen } from '../../../src/book/store/save-specimen.ts';
import { importCopy, makeCopy } from '../../../src/book/transfer/copies.ts';
import { openCopy } from '../../../src/book/transfer/unpack.ts';
import { nameOf } from '../../../src/colour/colour-name.ts';
import type { Lab } from '../../../src/colour/lab.ts';
import { LADDER_STEPS } from '../../../src/harmony/harmony.ts';
import { seededRandom } from '../../../src/random.ts';
import type { Result } from '../../../src/result.ts';

/**
 * The real store in a real browser, without the app's screens: fills books, saves without pause while
 * the test ends the browser, and looks through what is on the disk afterwards.
 */
export interface Probe {
  /** Writes many harmonies at once; every fourth with a specimen when `pictures`. */
  fill(count: number, seed: number, pictures?: boolean): Promise<void>;
  /** Saves for ever; tells of everything that the book says is on disk. */
  saveWithoutPause(seed: number): Promise<void>;
  /** Every card, as JSON. */
  cards(): Promise<string>;
  /** A copy of the whole book, in base 64. */
  copy(): Promise<string>;
  /** Brings in a copy from an address of the test's own server; answers how many entries were new. */
  bringIn(url: string): Promise<number>;
  /** Changes the name of an entry, as on another device. */
  rename(id: string, name: string): Promise<void>;
  audit(): Promise<Audit>;
  close(): Promise<void>;
}
export interface Audit {
  /** Clock of every entry, by id. */
  readonly clocks: Record<string, string>;
  readonly names: Record<string, string>;
  /** All that is not whole, in words. */
  readonly wrong: readonly string[];
}

declare global {
  interface Window {
    probe: Probe;
    /** Of the test: an entry's id and the version that was confirmed. */
    confirmed(id: string, clock: string): Promise<void>;
    /** Of the test: how far a merge is, 0…1. */
    progress?(done: number): Promise<void>;
    openProbe(name?: string): Promise<void>;
  }
}

const THINGS = [
  'Weir',
  'Lane',
  'Heron',
  'Slate roof',
  'Bracken',
  'Quarry',
  'Plum',
  'Gorse',
  'Ferry',
];
const TIMES = ['at noon', 'after rain', 'in March', 'towards evening', 'in fog', 'by lamp'];
const PIGMENTS = [
  'lead_white',
  'red_earth',
  'green_earth',
  'bone_black',
  'yellow_ochre',
  'azurite',
];

const must = <T>(result: Result<T, unknown>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
};

function harmonyOf(next: () => number, i: number, specimen: string | null): HarmonyBody {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)]!;
  const count = 3 + Math.floor(next() * 3);
  const colours = Array.from({ length: count }, (_, k) => {
    const L = 15 + next() * 75;
    const reach = 0.6 * Math.min(L, 100 - L) + 6;
    const lab: Lab = [L, (next() * 2 - 1) * reach, (next() * 1.7 - 0.7) * reach];
    const parts = [
      { pigment: pick(PIGMENTS), parts: 1 + Math.floor(next() * 5) },
      { pigment: pick(PIGMENTS.slice(0, 2)), parts: 1 },
    ].filter((part, n, all) => all.findIndex((one) => one.pigment === part.pigment) === n);
    return {
      name: `${nameOf(lab)}${k > 0 ? `, ${k + 1}` : ''}`,
      lab,
      share: k === 0 ? 0.5 : 0.5 / (count - 1),
      accent: false,
      ladder: LADDER_STEPS.map((step, n) => ({
        step,
        lab: [Math.max(4, Math.min(97, L + 14 - 6 * n)), lab[1], lab[2]] as Lab,
        share: 1 / 6,
      })),
      mixture: {
        recipe: parts.map(({ pigment }) => ({ pigment, share: 1 / parts.length })),
        lab,
        deltaE00: 0.4,
        reachable: true,
        parts,
        partsLab: lab,
        partsDeltaE00: 0.6,
      },
    };
  });
  return {
    name: `${pick(THINGS)} ${pick(TIMES)} ${i}`,
    note: i % 5 === 0 ? 'The grey was warmer than I thought.' : '',
    date: `20${30 + (i % 4)}-0${1 + (i % 9)}-1${i % 10}`,
    specimen,
    colours,
    keyed: true,
    shelf: 'starter shelf',
  };
}

/** Soft masses of colour: enough of a photograph to be kept and shown. */
async function picture(body: HarmonyBody, edge: number, seed: number): Promise<StoredPicture> {
  const next = seededRandom(seed);
  const [width, height] = [edge, Math.round(edge * 0.75)];
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d')!;
  const css = ([L, a, b]: Lab) => `lab(${L}% ${a} ${b})`;
  context.fillStyle = css(body.colours[0]!.lab);
  context.fillRect(0, 0, width, height);
  for (let n = 0; n < 60; n++) {
    context.fillStyle = css(body.colours[n % body.colours.length]!.lab);
    context.globalAlpha = 0.35;
    context.beginPath();
    const [x, y, r] = [next() * width, next() * height, (0.04 + next() * 0.16) * edge];
    context.ellipse(x, y, r, r * (0.3 + next()), next() * 3, 0, 7);
    context.fill();
  }
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 });
  return { bytes: await blob.arrayBuffer(), type: 'image/jpeg', width, height };
}

const keepSpecimen = async (book: Book, body: HarmonyBody, seed: number) =>
  must(
    await saveSpecimen(
      book,
      await picture(body, 640, seed),
      await picture(body, 160, seed),
      body.date,
      { name: body.name },
    ),
  );

window.openProbe = async (name) => {
  const book = must(await openBook(name === undefined ? {} : { name }));
  window.probe = {
    async fill(count, seed, pictures = false) {
      const next = seededRandom(seed);
      const records: AnyRecord[] = [];
      for (let i = 0; i < count; i++) {
        let body = harmonyOf(next, i, null);
        if (pictures && i % 4 !== 3)
          body = { ...body, specimen: (await keepSpecimen(book, body, i + 1)).entry.id };
        const marks = nextVersionMetadata(
          book.device,
          '000000000000000.00000',
          Date.now() - i * 60_000,
          [],
        );
        const id = crypto.randomUUID();
        records.push({ ...marks, id, kind: 'harmony', created: marks.changed, body });
      }
      must(
        await book.gateway.write(
          null,
          ['records', 'cards', 'files', 'meta'],
          async (transaction) => {
            for (const record of records) await storeEntry(transaction, record);
            return { value: null, ids: [] };
          },
        ),
      );
    },
    async saveWithoutPause(seed) {
      const next = seededRandom(seed);
      for (let i = 0; ; i++) {
        const body = harmonyOf(next, i, null);
        const specimen = await keepSpecimen(book, body, seed * 1000 + i);
        await window.confirmed(specimen.entry.id, specimen.entry.clock);
        const put = must(
          await book.put({ kind: 'harmony', body: { ...body, specimen: specimen.entry.id } }),
        );
        await window.confirmed(put.entry.id, put.entry.clock);
        const renamed = must(
          await book.put({
            kind: 'harmony',
            over: put.entry,
            body: { ...put.entry.body, name: `${body.name}, again` },
          }),
        );
        await window.confirmed(renamed.entry.id, renamed.entry.clock);
      }
    },
    cards: async () => JSON.stringify(must(await book.list())),
    async copy() {
      const { pieces } = must(await makeCopy(book, { nowMs: Date.now() }));
      const bytes = new Uint8Array(await new Blob([...pieces]).arrayBuffer());
      let text = '';
      for (let i = 0; i < bytes.length; i += 8192)
        text += String.fromCharCode(...bytes.subarray(i, i + 8192));
      return btoa(text);
    },
    async bringIn(url) {
      const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
      const copy = must(await openCopy(bytes, { subtle: crypto.subtle }));
      let told = 0;
      const brought = must(
        await importCopy(book, copy, {
          onProgress: (done) => {
            if (done < told) return;
            told = done + 0.02;
            void window.progress?.(done);
          },
        }),
      );
      return brought.added.length;
    },
    async rename(id, name) {
      const entry = must(await book.get('harmony', id));
      must(await book.put({ kind: 'harmony', over: entry, body: { ...entry.body, name } }));
    },
    audit: () => audit(book),
    async close() {
      book.close();
    },
  };
};

/** Looks through everything on the disk: each entry in its form, with its card, and every file whole. */
async function audit(book: Book): Promise<Audit> {
  const tables = ['records', 'cards', 'files', 'thumbnails'] as const;
  const { records, cards, files, thumbnails } = must(
    await book.gateway.read(tables, async (transaction) => ({
      records: await transaction.objectStore('records').getAll(),
      cards: await transaction.objectStore('cards').getAll(),
      files: await transaction.objectStore('files').getAll(),
      thumbnails: await transaction.objectStore('thumbnails').getAllKeys(),
    })),
  );
  const wrong: string[] = [];
  const whole = new Set<string>();
  for (const { id, bytes } of files) {
    if ((await sha256(crypto.subtle, bytes)) === id) whole.add(id);
    else wrong.push(`file ${id} is not what its name says`);
  }
  const pictured = new Set(thumbnails);
  const held = new Map(cards.map((card) => [card.id, card]));
  const clocks: Record<string, string> = {};
  const names: Record<string, string> = {};
  for (const raw of records) {
    const read = readRecord(raw);
    if (!read.ok) {
      wrong.push(`entry ${raw.id}: ${JSON.stringify(read.fault)}`);
      continue;
    }
    const record = read.value;
    clocks[record.id] = record.clock;
    if (record.body) names[record.id] = record.body.name;
    if (!sameValue(held.get(record.id), summaryOfEntry(record) ?? undefined))
      wrong.push(`entry ${record.id} and its card differ`);
    held.delete(record.id);
    for (const { file } of filesOf(record)) {
      if (!whole.has(file)) wrong.push(`entry ${record.id} has lost a file`);
      if (record.kind === 'specimen' && file === record.body?.photo.file && !pictured.has(file))
        wrong.push(`entry ${record.id} has lost its small picture`);
    }
  }
  for (const id of held.keys()) wrong.push(`card ${id} has no entry`);
  return { clocks, names, wrong };
}
