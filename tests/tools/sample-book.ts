import { clothRemarkWords } from '../../src/messages/drapery-messages.ts';
import { photographRemarkWords } from '../../src/messages/photograph-messages.ts';
import 'fake-indexeddb/auto';
import { webcrypto } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import sharp from 'sharp';
import type { HarmonyColour } from '../../src/book/schema/harmony.ts';
import type { PassageBody, PileRecord } from '../../src/book/schema/palette.ts';
import type { Entry } from '../../src/book/schema/record.ts';
import { SAMPLE_DEVICE, SAMPLE_FILE, sampleId } from '../../src/book/schema/sample-ids.ts';
import { type Book, openBook } from '../../src/book/store/open-book.ts';
import { saveGathering, saveSpecimen } from '../../src/book/store/save-specimen.ts';
import { makeCopy } from '../../src/book/transfer/copies.ts';
import { decodeBytes } from '../../src/cli/decode.ts';
import type { Garment, GarmentRequest } from '../../src/drapery/cloth-types.ts';
import { formulaOf } from '../../src/drapery/formula.ts';
import { drape } from '../../src/drapery/garment.ts';
import { gather } from '../../src/harmony/gather.ts';
import type { LabelMap } from '../../src/harmony/harmony.ts';
import { rangeMapping } from '../../src/harmony/shelf-range.ts';
import { variantTarget } from '../../src/harmony/variant-target.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { DEFAULT_PREFERENCES, mixOptionsOf } from '../../src/mixture/mixing-preferences.ts';
import { DEFAULT_RULES } from '../../src/palette/day-request.ts';
import type { Leftover } from '../../src/palette/leftovers.ts';
import { starterShelf, starterStock } from '../../src/pigment/starter-shelf.ts';
import type { Result } from '../../src/result.ts';
import { planDay } from '../../src/sheet/plan-day.ts';
import {
  type PassageSource,
  pilesOfSource,
} from '../../src/ui/features/palette/passage-sources.ts';
import { sourceFromHarmony } from '../../src/ui/state/drapery/colour-sources.ts';
import { recordsOf } from '../../src/ui/state/drapery/drapery-records.ts';
import {
  amountsOf,
  coatFromLayer,
  leftoverBodyOf,
  passageFromEntry,
} from '../../src/ui/state/palette/palette-records.ts';
import { render } from './specimen-camera.ts';
import { walkScenes } from './specimen-walks.ts';

/** Height of the photographs, and of their small pictures, in pixels. */
const HEIGHT = 680;
const SMALL_HEIGHT = 228;
/** Longest edge of a label map in the sample book: it is lit, not measured. */
const LABEL_EDGE = 320;
const WALK = 'A week along the mill stream';
const PAINTING = 'Two at the sluice';

interface Seen {
  readonly day: string;
  readonly name: string;
  readonly place: string;
  readonly light: string;
  readonly note: string;
  /** What the harmony is called, and what is said of it. */
  readonly harmony: string;
  readonly words: string;
}

/** The week, by the name of each scene. Places, people and painting are invented. */
const WEEK: Readonly<Record<string, Seen>> = {
  kingcup: {
    day: '2025-09-08',
    name: 'Kingcups at the weir',
    place: 'Foot of the weir',
    light: 'Thin cloud, towards noon',
    note: 'They flower a second time this year. Peat-brown water behind them, and foam.',
    harmony: 'Weir in September',
    words:
      'The yellow carries because the brown behind it is nearly its own hue, only dark. The sky in the water is the one cool thing.',
  },
  'jay-feather': {
    day: '2025-09-09',
    name: 'Jay’s feather on moss',
    place: 'Alders below the mill',
    light: 'Shade, open sky',
    note: 'Found on the path. The blue is a fifth of what it seems.',
    harmony: 'Jay on moss',
    words: 'For the girl’s gown: blue held down by a yellowish green. One red berry is enough.',
  },
  'lichened-wall': {
    day: '2025-09-11',
    name: 'North wall of the mill',
    place: 'The mill',
    light: 'Low sun from the side',
    note: 'Orange crusts on cool stone; moss in the joints.',
    harmony: 'Lichened wall',
    words: 'Greys that look violet beside the orange. To be kept for the sluice posts.',
  },
  'rowan-branch': {
    day: '2025-09-12',
    name: 'Rowan over the tail race',
    place: 'Tail race',
    light: 'Hazy, before noon',
    note: 'Berries, a few leaves turned already.',
    harmony: 'Rowan and haze',
    words: 'Red and green of one lightness; the haze keeps them apart. For the miller’s cloak.',
  },
  'mill-pond': {
    day: '2025-09-14',
    name: 'Mill pond after sunset',
    place: 'The pond, from the dam',
    light: 'Dusk, a quarter of an hour after sunset',
    note: 'One window lit.',
    harmony: 'Pond after sunset',
    words: 'The afterglow is not light at all: it only seems so above that blue.',
  },
};

/** The day on which the palette is laid. */
const DAY = '2025-09-15';

function must<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
}

/** A smaller label map: each point that of the nearest point before. */
function smaller({ width, height, data }: LabelMap, edge: number): LabelMap {
  const scale = Math.max(1, Math.max(width, height) / edge);
  const [w, h] = [Math.round(width / scale), Math.round(height / scale)];
  const small = new Uint8Array(w * h);
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++)
      small[y * w + x] =
        data[Math.floor(((y + 0.5) / h) * height) * width + Math.floor(((x + 0.5) / w) * width)]!;
  return { width: w, height: h, data: small };
}

const shelf = starterShelf();
const options = mixOptionsOf(shelf, DEFAULT_PREFERENCES);

/**
 * Makes the sample book: every photograph rendered, every harmony gathered, every mixture sought and
 * every amount planned by the code that the app runs.
 */
export async function sampleBook(): Promise<Blob> {
  // Entries are a minute apart, in the order in which they would have been written.
  let ms = Date.UTC(2025, 8, 8, 18);
  const book = must(
    await openBook({
      name: 'sample-book',
      now: () => {
        ms += 60_000;
        return ms;
      },
      newId: () => SAMPLE_DEVICE,
      subtle: webcrypto.subtle as SubtleCrypto,
      channel: null,
      locks: undefined,
    }),
  );
  const harmonies = new Map<string, Entry<'harmony'>>();
  for (const scene of walkScenes()) {
    const rendered = await render(scene, HEIGHT);
    harmonies.set(scene.name, await keepWalk(book, scene.name, rendered));
    console.error(`${scene.name}: gathered`);
  }
  const { girl, miller } = await keepDraperies(book, harmonies);
  await keepFormulas(book, girl, miller);
  await keepPalette(book, girl.entry, harmonies.get('kingcup')!);
  const copy = must(await makeCopy(book, { subtle: webcrypto.subtle as SubtleCrypto, nowMs: ms }));
  console.error(`${copy.entries} entries, ${Math.round(copy.bytes / 1000)} kB`);
  return new Blob([...copy.pieces]);
}

async function keepWalk(
  book: Book,
  scene: string,
  { file, width, height }: { file: Buffer; width: number; height: number },
): Promise<Entry<'harmony'>> {
  const { day, name, place, light, note, harmony, words } = WEEK[scene]!;
  const decoded = must(await decodeBytes(file));
  const gathered = must(gather(decoded.pixels, {}));
  const small = await sharp(file).resize({ height: SMALL_HEIGHT }).jpeg({ quality: 72 }).toBuffer();
  const picture = (bytes: Buffer, w: number, h: number) => ({
    bytes: new Uint8Array(bytes).buffer,
    type: 'image/jpeg',
    width: w,
    height: h,
  });
  const id = sampleId(scene);
  // The store names a new photograph itself; the sample book names every entry.
  const named: Book = { ...book, put: (draft) => book.put({ id, ...draft }) };
  const { entry } = must(
    await saveSpecimen(
      named,
      picture(file, width, height),
      picture(small, Math.round((SMALL_HEIGHT * width) / height), SMALL_HEIGHT),
      day,
      { name, place, light, note, walk: WALK },
    ),
  );
  must(
    await saveGathering(named, entry, {
      gathered: {
        ...gathered,
        remarks: [...decoded.remarks, ...gathered.remarks].map(photographRemarkWords),
        labels: smaller(gathered.labels, LABEL_EDGE),
      },
    }),
  );
  const toKey = rangeMapping(
    gathered.colours.map(({ lab }) => lab),
    shelf,
  );
  // In the dusk the painter took the sky a little deeper than it was.
  const deepened = scene === 'mill-pond' ? 0 : -1;
  const targets = gathered.colours.map(({ lab }, i) =>
    i === deepened ? variantTarget(toKey(lab), 'deeper', 'small').lab : toKey(lab),
  );
  const answers = must(findMixtures(targets, shelf, options));
  const colours = gathered.colours.map(
    (colour, i): HarmonyColour => ({
      ...colour,
      ...(i === deepened ? { taken: [{ way: 'deeper', amount: 'small' }] } : {}),
      answer: answers[i]!,
      mixture: answers[i]!.simplest,
    }),
  );
  const put = await book.put({
    kind: 'harmony',
    id: sampleId(`harmony-${scene}`),
    body: {
      ...{ name: harmony, note: words, date: day, specimen: id },
      ...{ colours, keyed: true, shelf: shelf.name },
    },
  });
  return must(put).entry;
}

type Harmonies = ReadonlyMap<string, Entry<'harmony'>>;

/** The colour of a harmony that comes nearest to what is looked for. */
function pick(harmonies: Harmonies, scene: string, [, a, b]: readonly [number, number, number]) {
  const entry = harmonies.get(scene)!;
  const { colours } = sourceFromHarmony(entry.id, entry.body);
  return colours.toSorted(
    (x, y) => Math.hypot(x.lab[1] - a, x.lab[2] - b) - Math.hypot(y.lab[1] - a, y.lab[2] - b),
  )[0]!;
}

async function keepDraperies(book: Book, harmonies: Harmonies) {
  const blue = pick(harmonies, 'jay-feather', [60, -8, -34]);
  const red = pick(harmonies, 'rowan-branch', [52, 58, 48]);
  const yellow = pick(harmonies, 'kingcup', [80, 6, 80]);
  const grey = pick(harmonies, 'lichened-wall', [56, 0, -3]);
  const plain = { way: 'deepened in its own hue', stuff: 'wool' } as const;
  const girl: readonly GarmentRequest[] = [
    { ...plain, name: 'gown', lab: blue.lab },
    { ...plain, name: 'kerchief', lab: [86, 1, 9], stuff: 'linen', declared: 'white' },
  ];
  const miller: readonly GarmentRequest[] = [
    {
      ...plain,
      name: 'cloak',
      lab: red.lab,
      lining: { ...plain, name: 'lining', lab: grey.lab, stuff: 'linen' },
      trim: { ...plain, name: 'trim', lab: yellow.lab, stuff: 'satin' },
    },
    { name: 'sleeve', lab: [38, 42, 18], way: 'underpaint and glaze', stuff: 'satin' },
  ];
  const keep = async (
    name: string,
    id: string,
    harmony: string,
    note: string,
    wishes: readonly GarmentRequest[],
  ) => {
    const garments = wishes.map((wish) => must(drape(wish, shelf)));
    const put = await book.put({
      kind: 'drapery',
      id: sampleId(id),
      body: {
        name,
        note,
        date: '2025-09-13',
        harmony,
        garments: garments.flatMap((garment, i) =>
          recordsOf(garment, { wish: wishes[i]!, share: 1 / garments.length }),
        ),
      },
    });
    console.error(`${name}: draped`);
    return { entry: must(put).entry, garments };
  };
  return {
    girl: await keep(
      'The girl at the sluice',
      'drapery-girl',
      sampleId('harmony-jay-feather'),
      'Her gown is the feather’s blue. The kerchief stays the lightest thing in the picture.',
      girl,
    ),
    miller: await keep(
      'The miller',
      'drapery-miller',
      sampleId('harmony-rowan-branch'),
      'Cloak of the berries, lined with the grey of his own wall, edged with kingcup yellow.',
      miller,
    ),
  };
}

type Draped = { readonly entry: Entry<'drapery'>; readonly garments: readonly Garment[] };

async function keepFormulas(book: Book, girl: Draped, miller: Draped): Promise<void> {
  const keep = async (id: string, name: string, subject: string, from: Draped, at: number) => {
    const garment = from.garments[at]!;
    const { passages } = formulaOf(garment, { name, subject, note: '' }, shelf);
    const put = await book.put({
      kind: 'formula',
      id: sampleId(id),
      body: {
        ...{ name, subject, date: '2025-09-13', from: from.entry.id, passages },
        note: garment.remarks.map(clothRemarkWords).join(' '),
      },
    });
    must(put);
  };
  await keep('formula-sleeve', 'Glazed sleeve', 'sleeve of satin', miller, 1);
  await keep('formula-gown', 'Blue gown', 'gown of wool', girl, 0);
}

/** Shares of a canvas that piles cover, in their order: as many piles as one palette carries. */
const GOWN = [0.01, 0.03, 0.05, 0.04, 0.03];
const WATER = [0.08, 0.06, 0.02];

async function keepPalette(book: Book, girl: Entry<'drapery'>, weir: Entry<'harmony'>) {
  const canvas = { widthCm: 60, heightCm: 45 };
  const passage = async (
    id: string,
    name: string,
    from: PassageSource,
    shares: readonly number[],
    had: PassageBody['coats'],
  ) => {
    let n = 0;
    const piles = pilesOfSource(from, () => `pile-${n++}`)
      .slice(0, shares.length)
      .map(({ areaCm2: _, ...pile }, i): PileRecord => ({ ...pile, share: shares[i]! }));
    const put = await book.put({
      kind: 'passage',
      id: sampleId(id),
      body: {
        ...{ name, note: '', painting: PAINTING, from: from.id },
        ...{ piles, coats: had, canvas },
      },
    });
    return must(put).entry;
  };
  const under = coatFromLayer({
    date: '2025-09-10',
    film: 'dead colour',
    parts: [
      { pigment: 'lead_white', parts: 3 },
      { pigment: 'raw_umber', parts: 1 },
    ],
  });
  const passages = [
    await passage('passage-gown', 'The girl’s gown', girl, GOWN, [under]),
    await passage('passage-water', 'Water below the sluice', weir, WATER, [under]),
  ];
  const { name, mixture } = passages[0]!.body.piles[2]!;
  const left: Leftover = {
    ...{ id: sampleId('leftover-gown'), name, cm3: 0.8, date: '2025-09-14' },
    ...{ parts: mixture.parts, lab: mixture.partsLab, kept: 'under film' },
  };
  must(await book.put({ kind: 'leftover', id: left.id, body: leftoverBodyOf(left) }));

  const palette = must(
    await book.put({
      kind: 'palette',
      id: sampleId('palette-sluice'),
      body: {
        ...{ name: 'Gown and water', note: '', date: DAY, shape: 'oval', hand: 'left' },
        ...{ seats: [], passages: passages.map(({ id }) => id), piles: [] },
      },
    }),
  ).entry;
  const day = must(
    planDay(
      {
        date: DAY,
        palettes: [{ name: palette.body.name, passages: passages.map(passageFromEntry) }],
        rules: DEFAULT_RULES,
        leftovers: [left],
      },
      { shelf, stock: starterStock() },
    ),
  );
  if (day.palettes.length !== 1) throw new Error('more than one palette carries');
  must(
    await book.put({
      kind: 'sheet',
      id: sampleId(`sheet-${DAY}`),
      body: {
        ...{ name: 'Morning sheet, gown and water', note: '', date: DAY },
        ...{ palettes: [palette.id], amounts: amountsOf(day) },
      },
    }),
  );
}

/** Writes samples/mill-stream.zip anew. */
export async function writeSampleBook(folder = resolve(process.cwd(), 'samples')): Promise<void> {
  const copy = await sampleBook();
  await writeFile(resolve(folder, SAMPLE_FILE), Buffer.from(await copy.arrayBuffer()));
}
