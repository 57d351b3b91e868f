import * as v from 'valibot';
import { addEntry } from '../pigment/edit.ts';
import { shelfOfStock } from '../pigment/mixable.ts';
import { STARTER_SURFACE } from '../pigment/starter.ts';
import { draftOf, type Stock } from '../pigment/stock.ts';
import { findWhite } from '../pigment/white.ts';
import { fail, ok, type Result } from '../result.ts';
import { type DayAsked, type PaletteAsked, RULES } from './day.ts';
import type { PaletteFault } from './faults.ts';
import { FILM_WORDS } from './film.ts';
import type { Passage } from './passage.ts';

/**
 * The JSON form of a day, version 1. Only `kind`, `version`, `date` and `passages` are needed.
 *
 * ```json
 * {
 *   "kind": "kingcup-day",
 *   "version": 1,
 *   "date": "2026-05-14",
 *   "rules": {
 *     "seats": ["lead_white", "yellow_ochre", "raw_umber"],
 *     "shape": "oval", "hand": "left",
 *     "tooth": 0.1, "waste": 0.2, "heapCm3": 0.5, "edgeCm3": 0.5,
 *     "oil": "linseed", "pupils": false,
 *     "people": ["Ines"],
 *     "acknowledged": [{ "pigment": "lead_white", "lot": "3", "person": "Ines", "date": "2026-05-02" }]
 *   },
 *   "stock": [{ "pigment": "lead_white", "form": "paste", "lot": "3", "amount": 400, "unit": "g" }],
 *   "passages": [{
 *     "name": "Water under the alders",
 *     "palette": "Mill stream",
 *     "canvas": { "widthCm": 60, "heightCm": 45 },
 *     "layers": [{ "date": "2026-05-04", "film": "dead colour", "parts": { "raw_umber": 1, "lead_white": 2 } }],
 *     "piles": [
 *       { "name": "still water", "parts": { "lead_white": 3, "ultramarine": 1 }, "share": 0.2, "film": "body colour" },
 *       { "name": "deep glaze", "parts": { "madder_lake": 1 }, "cm2": 300, "film": "glaze", "coats": 2 }
 *     ]
 *   }],
 *   "leftovers": [{ "name": "still water", "parts": { "lead_white": 3, "ultramarine": 1 }, "cm3": 1.5, "kept": "under film", "date": "2026-05-13" }]
 * }
 * ```
 *
 * - `parts` are by volume of paste, under the shelf's names; null where the mixture was deleted.
 *   `letDowns` ({"prussian_blue": 10}: 1 part to 10 of the white named in `letDownWhite`, else of
 *   lead white) makes that pigment's parts be taken from a let-down pile.
 * - A pile covers `cm2`, or a `share` (0…1) of the passage's `canvas`. `film` is imprimatura, dead
 *   colour, body colour, loaded, impasto, glaze or scumble; `filmUm` (wet, micrometres), `coats`,
 *   `spareOil` (cm3 to 1 cm3 of paste), `tooth`, `waste` and `heapCm3` override what is usual.
 * - Passages of one `palette` share it; without it a passage has a palette of its own. `order`, on any
 *   passage of a palette, names its mixed piles in an order set by hand.
 * - `stock` is what stands on the shelf: pigment, `form` (powder, paste or tube), `lot`, `grade`,
 *   `amount` with its `unit`, the lot's own `density` and `oil`. Without it nothing is counted.
 * - `felt` on a layer ({"date", "state": "wet" | "tacky" | "touch-dry"}) is what the finger found.
 * - `kept` is under water, under film, in a tube or open; `skinned` marks a leftover to discard.
 */
const number = v.pipe(v.number(), v.finite());
const words = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(120));
const parts = v.record(v.string(), number);
const film = v.picklist(FILM_WORDS);
const PILE = v.strictObject({
  name: words,
  parts: v.nullable(parts),
  letDowns: v.optional(parts, {}),
  letDownWhite: v.optional(v.string(), 'lead_white'),
  lab: v.optional(v.strictTuple([number, number, number])),
  cm2: v.optional(number),
  share: v.optional(number),
  film: v.optional(film, 'body colour'),
  filmUm: v.optional(number),
  coats: v.optional(number),
  spareOil: v.optional(number),
  tooth: v.optional(number),
  waste: v.optional(number),
  heapCm3: v.optional(number),
});
const LAYER = v.strictObject({
  date: v.string(),
  film,
  filmUm: v.optional(number),
  parts,
  spareOil: v.optional(number),
  felt: v.optional(
    v.strictObject({ date: v.string(), state: v.picklist(['wet', 'tacky', 'touch-dry']) }),
  ),
});
const PASSAGE = v.strictObject({
  name: words,
  palette: v.optional(words),
  canvas: v.optional(v.strictObject({ widthCm: number, heightCm: number })),
  layers: v.optional(v.array(LAYER), []),
  piles: v.pipe(v.array(PILE), v.maxLength(60)),
  order: v.optional(v.array(v.string())),
});
const RULES_FORM = v.strictObject({
  seats: v.optional(v.array(v.string())),
  shape: v.optional(v.picklist(['oval', 'square'])),
  hand: v.optional(v.picklist(['left', 'right'])),
  tooth: v.optional(v.pipe(number, v.minValue(0), v.maxValue(5))),
  waste: v.optional(v.pipe(number, v.minValue(0), v.maxValue(5))),
  heapCm3: v.optional(v.pipe(number, v.minValue(0), v.maxValue(100))),
  edgeCm3: v.optional(v.pipe(number, v.minValue(0), v.maxValue(100))),
  oil: v.optional(v.picklist(['linseed', 'walnut'])),
  pupils: v.optional(v.boolean()),
  people: v.optional(v.pipe(v.array(words), v.maxLength(12))),
  acknowledged: v.optional(
    v.array(
      v.strictObject({
        pigment: v.string(),
        lot: v.string(),
        person: v.string(),
        date: v.string(),
      }),
    ),
  ),
});
const LEFTOVER = v.strictObject({
  name: words,
  parts,
  lab: v.optional(v.strictTuple([number, number, number])),
  cm3: v.pipe(number, v.minValue(0)),
  kept: v.picklist(['under water', 'under film', 'in a tube', 'open']),
  date: v.string(),
  skinned: v.optional(v.boolean()),
});
const ENTRY = v.strictObject({
  pigment: v.string(),
  form: v.optional(v.picklist(['powder', 'paste', 'tube']), 'tube'),
  lot: v.optional(v.string()),
  grade: v.optional(v.string()),
  amount: v.optional(v.nullable(number)),
  unit: v.optional(v.picklist(['g', 'ml'])),
  density: v.optional(number),
  oil: v.optional(number),
});
const FORM = v.strictObject({
  kind: v.literal('kingcup-day'),
  version: v.pipe(v.number(), v.integer()),
  date: v.string(),
  rules: v.optional(RULES_FORM, {}),
  stock: v.optional(v.pipe(v.array(ENTRY), v.maxLength(500))),
  passages: v.array(PASSAGE),
  leftovers: v.optional(v.array(LEFTOVER), []),
});
export const DAY_VERSION = 1;

/** A day as a file gives it; `stock` null where the file counts none. */
export interface DayFile {
  readonly asked: DayAsked;
  readonly stock: Stock | null;
}

/** A day from the text of its JSON form. */
export function readDay(text: string): Result<DayFile, PaletteFault> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return fail({ code: 'day-broken' });
  }
  const version = (json as { version?: unknown } | null)?.version;
  if (typeof version === 'number' && version > DAY_VERSION)
    return fail({ code: 'day-newer', version });
  const read = v.safeParse(FORM, json, { abortEarly: true });
  if (!read.success) {
    const issue = read.issues[0];
    const wants =
      issue.received === 'undefined'
        ? 'is missing'
        : issue.expected === 'never'
          ? 'is nothing that a day knows'
          : `wants ${issue.expected ?? 'something else'}, not ${issue.received}`;
    return fail({ code: 'day-form', where: v.getDotPath(issue) ?? '', wants });
  }
  const { date, rules, passages, leftovers } = read.output;
  const stock = read.output.stock === undefined ? ok(null) : stockOf(read.output.stock);
  if (!stock.ok) return stock;
  const { tooth, waste, heapCm3, ...settled } = given(rules);
  const palettes = new Map<string, { passages: Passage[]; order: readonly string[] }>();
  for (const [i, row] of passages.entries()) {
    const name = row.palette ?? row.name;
    const palette = palettes.get(name) ?? { passages: [], order: [] };
    palette.passages.push(passageOf(row, i));
    palettes.set(name, { ...palette, order: row.order ?? palette.order });
  }
  const asked: DayAsked = {
    date,
    palettes: [...palettes].map(
      ([name, { passages: on, order }]): PaletteAsked => ({
        name,
        passages: on,
        ...(order.length > 0 ? { order: order.map((pile) => idOf(on, pile)) } : {}),
      }),
    ),
    rules: {
      ...RULES,
      ...settled,
      allowances: { ...RULES.allowances, ...given({ tooth, waste, heapCm3 }) },
    },
    leftovers: leftovers.map((row, i) => ({
      ...given(row),
      id: `leftover-${i + 1}`,
      parts: partsOf(row.parts),
    })),
  };
  return ok({ asked, stock: stock.value });
}

function stockOf(rows: readonly v.InferOutput<typeof ENTRY>[]): Result<Stock, PaletteFault> {
  let stock: Stock = {
    name: 'the shelf of this day',
    surface: STARTER_SURFACE,
    white: null,
    entries: [],
    own: [],
  };
  for (const [i, row] of rows.entries()) {
    const draft = { ...draftOf(row.pigment, row.form), ...given(row) };
    const added = addEntry(stock, draft, `stock-${i + 1}`);
    if (!added.ok) return fail({ code: 'day-stock', row: i + 1, fault: added.fault[0]! });
    stock = added.value;
  }
  const shelf = shelfOfStock(stock);
  const white = findWhite(shelf.paints, shelf.surface);
  const entry = stock.entries.find(({ pigment, amount }) => pigment === white && amount !== 0);
  return ok({ ...stock, white: entry?.id ?? null });
}

const partsOf = (record: Record<string, number>) =>
  Object.entries(record).map(([pigment, count]) => ({ pigment, parts: count }));

function passageOf(row: v.InferOutput<typeof PASSAGE>, at: number): Passage {
  const id = `passage-${at + 1}`;
  return {
    id,
    name: row.name,
    ...given({ canvas: row.canvas }),
    layers: row.layers.map((layer) => ({ ...given(layer), parts: partsOf(layer.parts) })),
    piles: row.piles.map(({ parts: of, letDowns, letDownWhite, cm2, share, ...rest }, i) => ({
      ...given(rest),
      id: `${id}-pile-${i + 1}`,
      cover: share === undefined ? { cm2: cm2 ?? 0 } : { share },
      parts:
        of === null
          ? null
          : partsOf(of).map((part) =>
              part.pigment in letDowns ? { ...part, letDown: true } : part,
            ),
      letDowns: Object.entries(letDowns).map(([pigment, whiteParts]) => ({
        pigment,
        white: letDownWhite,
        parts: 1 as const,
        whiteParts,
      })),
    })),
  };
}

const idOf = (passages: readonly Passage[], name: string): string =>
  passages.flatMap(({ piles }) => piles).find((pile) => pile.name === name)?.id ?? name;

/** A record without the fields that were not given. */
type Given<T> = { [K in keyof T]: Exclude<T[K], undefined> };
const given = <T extends object>(record: T): Given<T> =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Given<T>;
