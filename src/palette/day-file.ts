import * as v from 'valibot';
import { addEntry } from '../pigment/edit-stock.ts';
import { findWhite } from '../pigment/masstone.ts';
import { mixtureShelfOf } from '../pigment/mixing-shelf.ts';
import { STARTER_SURFACE } from '../pigment/starter-shelf.ts';
import { draftOf, type Stock } from '../pigment/stock.ts';
import { fail, ok, type Result } from '../result.ts';
import { type DayRequest, DEFAULT_RULES, type PaletteRequest } from './day-request.ts';
import { DAY_FORM, type ENTRY, type PASSAGE } from './day-schema.ts';
import type { PaletteFault } from './palette-faults.ts';
import type { Passage } from './passage.ts';

const DAY_VERSION = 1;

/** A day from a file; `stock` is null if the file has none. */
interface DayFile {
  readonly asked: DayRequest;
  readonly stock: Stock | null;
}

/**
 * Reads a day from its JSON text (day-schema.ts) and checks it.
 * @returns a fault for broken JSON, a newer version or an invalid field
 */
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
  const read = v.safeParse(DAY_FORM, json, { abortEarly: true });
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
  const asked: DayRequest = {
    date,
    palettes: [...palettes].map(
      ([name, { passages: on, order }]): PaletteRequest => ({
        name,
        passages: on,
        ...(order.length > 0 ? { order: order.map((pile) => idOf(on, pile)) } : {}),
      }),
    ),
    rules: {
      ...DEFAULT_RULES,
      ...settled,
      allowances: { ...DEFAULT_RULES.allowances, ...given({ tooth, waste, heapCm3 }) },
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
  const shelf = mixtureShelfOf(stock);
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

/** A record without its undefined fields. */
type Given<T> = { [K in keyof T]: Exclude<T[K], undefined> };
const given = <T extends object>(record: T): Given<T> =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Given<T>;
