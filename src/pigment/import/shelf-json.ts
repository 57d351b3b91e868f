import * as v from 'valibot';
import { BANDS, bandNm } from '../../colour/grid.ts';
import type { Surface } from '../../optics/surface.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Shelf, ShelfPaint, ShelfRemark } from '../shelf.ts';
import { ownPaint } from '../starter-shelf.ts';
import { resamplePaint, shelfFrom, shelfResamplerFor } from './assemble-shelf.ts';
import type { ShelfFault } from './shelf-fault.ts';

/**
 * Schema of the JSON form of a shelf, version 1:
 *
 * ```json
 * {
 *   "kind": "kingcup-shelf",
 *   "version": 1,
 *   "name": "Winter shelf",
 *   "basis": "volume",
 *   "surface": { "k1": 0.03, "k2": 0.65, "specular": "included" },
 *   "white": "lead_white",
 *   "wavelengths": [380, 390, …, 730],
 *   "paints": [
 *     { "pigment": "yellow_ochre" },
 *     { "pigment": "Meadow green, lot 2", "label": "Meadow green", "K": [0.9, …], "S": [0.08, …] }
 *   ]
 * }
 * ```
 *
 * - `pigment` is the unique name of the paint in recipes; `label` (default: the same) is for
 *   display.
 * - A paint without K and S is a built-in one, by its id. K and S have one number for each of
 *   `wavelengths` (nm, rising, steps up to 20, covering 400 to 700), relative to titanium-white
 *   paste whose mean S over 450-650 nm is 1; K ≥ 0, S > 0.
 * - `basis` is the meaning of a part: volume of paste, mass of paint, or unknown (the default).
 *   Grams are computed for volume only.
 * - `surface` has the Saunderson constants; `specular` is `included` (the default), or `excluded`
 *   for varnished paint seen without glare. Without `surface` there is no surface correction.
 * - `white` is the studio's white, null for none; if absent, findWhite() looks for one.
 */
const SHELF_JSON = v.object({
  kind: v.literal('kingcup-shelf'),
  version: v.pipe(v.number(), v.integer()),
  name: v.optional(v.string()),
  basis: v.optional(v.string(), 'unknown'),
  surface: v.optional(v.unknown()),
  white: v.optional(v.nullable(v.string())),
  wavelengths: v.optional(v.array(v.number()), []),
  paints: v.array(
    v.object({
      pigment: v.string(),
      label: v.optional(v.string()),
      K: v.optional(v.array(v.unknown())),
      S: v.optional(v.array(v.unknown())),
    }),
  ),
});
const SHELF_JSON_VERSION = 1;

const SURFACE = v.object({
  k1: v.pipe(
    v.number(),
    v.minValue(0),
    v.check((k) => k < 1),
  ),
  k2: v.pipe(
    v.number(),
    v.minValue(0),
    v.check((k) => k < 1),
  ),
  specular: v.optional(v.picklist(['included', 'excluded']), 'included'),
});
const BASIS = v.picklist(['volume', 'mass', 'unknown']);
type Row = v.InferOutput<typeof SHELF_JSON>['paints'][number];

/**
 * Reads a shelf from the text of its JSON form.
 * @param options `name` is used if the file has none; `surface` overrides that of the file
 */
export function readShelfJson(
  text: string,
  options: { readonly name: string; readonly surface?: Surface },
): Result<Shelf, ShelfFault> {
  const json = parse(text);
  if (json === undefined) return fail({ code: 'shelf-broken' });
  const form = v.safeParse(SHELF_JSON, json);
  if (!form.success) return fail({ code: 'shelf-not-a-shelf' });
  const { version, basis, wavelengths, paints: rows, ...rest } = form.output;
  if (version > SHELF_JSON_VERSION) return fail({ code: 'shelf-newer', version });
  if (!v.is(BASIS, basis)) return fail({ code: 'shelf-basis', text: basis });
  const surface = v.safeParse(SURFACE, rest.surface ?? { k1: 0, k2: 0 });
  if (!surface.success && options.surface === undefined)
    return fail({ code: 'shelf-surface', text: JSON.stringify(rest.surface) });

  const paints: ShelfPaint[] = [];
  const remarks: ShelfRemark[] = [];
  if (rest.surface === undefined && options.surface === undefined)
    remarks.push({ code: 'no-surface' });
  const grid = shelfResamplerFor(wavelengths);
  for (const [i, row] of rows.entries()) {
    if (row.pigment.trim() === '') return fail({ code: 'shelf-name-missing', row: i + 1 });
    const paint = paintOfRow(row, wavelengths, grid);
    if (!paint.ok) return paint;
    paints.push(paint.value);
  }
  if (grid.ok && rows.some(({ K, S }) => K !== undefined || S !== undefined))
    remarks.push(...grid.value.remarks);
  return shelfFrom({
    name: rest.name ?? options.name,
    basis,
    surface: options.surface ?? (surface.output as Surface),
    white: rest.white,
    paints,
    remarks,
  });
}

function paintOfRow(
  { pigment, label, K, S }: Row,
  nms: readonly number[],
  grid: ReturnType<typeof shelfResamplerFor>,
): Result<ShelfPaint, ShelfFault> {
  if (K === undefined && S === undefined) {
    const own = ownPaint(pigment);
    if (own === null) return fail({ code: 'shelf-pigment-unknown', pigment });
    return ok({ ...own, label: label ?? own.label });
  }
  if (!grid.ok) return grid;
  const [absorption, scattering] = [numbers(pigment, 'K', K, nms), numbers(pigment, 'S', S, nms)];
  if (!absorption.ok) return absorption;
  if (!scattering.ok) return scattering;
  return resamplePaint(grid.value, nms, {
    pigment,
    label: label ?? pigment,
    K: absorption.value,
    S: scattering.value,
  });
}

function numbers(
  pigment: string,
  row: 'K' | 'S',
  values: readonly unknown[] | undefined,
  nms: readonly number[],
): Result<number[], ShelfFault> {
  if (values === undefined) return fail({ code: 'shelf-row-missing', pigment, row });
  if (values.length > nms.length)
    return fail({ code: 'shelf-length', pigment, row, values: values.length, bands: nms.length });
  for (const [i, nm] of nms.entries()) {
    const value = values[i];
    if (value === undefined || value === null)
      return fail({ code: 'shelf-band-missing', pigment, row, nm });
    if (typeof value !== 'number' || !Number.isFinite(value))
      return fail({ code: 'shelf-band-text', pigment, row, nm, text: String(value) });
  }
  return ok(values as number[]);
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const WAVELENGTHS = Array.from({ length: BANDS }, (_, band) => bandNm(band));
/** Six significant digits are finer than any measurement and keep the file readable. */
const rounded = (values: Float64Array): number[] =>
  Array.from(values, (value) => Number(value.toPrecision(6)));

/** Writes a shelf as JSON with all curves. Remarks are not written. */
export function writeShelfJson({ name, basis, surface, white, paints }: Shelf): string {
  const head = {
    kind: 'kingcup-shelf',
    version: SHELF_JSON_VERSION,
    name,
    basis,
    surface,
    white,
    wavelengths: WAVELENGTHS,
  };
  const rows = paints.map(({ pigment, label, paint }) =>
    JSON.stringify({ pigment, label, K: rounded(paint.K), S: rounded(paint.S) }),
  );
  const body = JSON.stringify(head, null, 2)
    .replace(/\[[\d\s,]+\]/, JSON.stringify(WAVELENGTHS))
    .slice(0, -2);
  return `${body},\n  "paints": [\n    ${rows.join(',\n    ')}\n  ]\n}\n`;
}

/** Writes a shelf as CSV for readShelf(). Labels, white and `specular` are lost. */
export function writeShelfCsv({ basis, surface, paints }: Shelf): string {
  const quoted = (name: string) =>
    /[",\n\r]|^\s|\s$/.test(name) ? `"${name.replaceAll('"', '""')}"` : name;
  const lines = [
    `# surface: ${surface.k1},${surface.k2}`,
    `# basis: ${basis}`,
    `index,pigment,coefficient,${WAVELENGTHS.join(',')}`,
    ...paints.flatMap(({ pigment, paint }, i) =>
      (['K', 'S'] as const).map(
        (row) => `${i + 1},${quoted(pigment)},${row},${rounded(paint[row]).join(',')}`,
      ),
    ),
  ];
  return `${lines.join('\n')}\n`;
}
