import * as v from 'valibot';
import { fail, ok, type Result } from '../result.ts';
import { CLOCK_FORM, type Clock, LATEST_MS, msOf } from './clock.ts';
import { type DraperyBody, draperyBody, type FormulaBody, formulaBody } from './drapery.ts';
import type { BookFault } from './faults.ts';
import { type FileRef, ID_FORM } from './fields.ts';
import { type HarmonyBody, harmonyBody } from './harmony.ts';
import {
  type LeftoverBody,
  leftoverBody,
  type PaletteBody,
  type PassageBody,
  type PileBody,
  paletteBody,
  passageBody,
  pileBody,
  type SheetBody,
  sheetBody,
} from './palette.ts';
import { type ShelfBody, type SwatchBody, shelfBody, swatchBody } from './shelf.ts';
import { type SpecimenBody, specimenBody } from './specimen.ts';

/** What each kind of entry holds. */
export interface Bodies {
  specimen: SpecimenBody;
  harmony: HarmonyBody;
  drapery: DraperyBody;
  formula: FormulaBody;
  passage: PassageBody;
  palette: PaletteBody;
  sheet: SheetBody;
  shelf: ShelfBody;
  swatch: SwatchBody;
  pile: PileBody;
  leftover: LeftoverBody;
}
export type Kind = keyof Bodies;

const BODY_SCHEMAS: { readonly [K in Kind]: v.GenericSchema<unknown, Bodies[K]> } = {
  specimen: specimenBody,
  harmony: harmonyBody,
  drapery: draperyBody,
  formula: formulaBody,
  passage: passageBody,
  palette: paletteBody,
  sheet: sheetBody,
  shelf: shelfBody,
  swatch: swatchBody,
  pile: pileBody,
  leftover: leftoverBody,
};
export const KINDS = Object.keys(BODY_SCHEMAS) as readonly Kind[];

/** The schema that today's code writes. */
export const SCHEMA = 1;

/** Per device, the clock of its latest change that a version knows of. */
export type Seen = Readonly<Record<string, Clock>>;

/** The one form of every entry in the book. */
export interface Form<K extends Kind, Body> {
  readonly id: string;
  readonly kind: K;
  readonly schema: number;
  /** ISO date and time. */
  readonly created: string;
  readonly changed: string;
  /** Of this version; with `device` it names the version, for ever and everywhere. */
  readonly clock: Clock;
  readonly device: string;
  /** What this version was made in knowledge of, itself included: tells "newer" from "at the same time". */
  readonly seen: Seen;
  /** In the bin since. */
  readonly deletedAt?: string;
  /** Taken out of the bin for good: only the mark that it was deleted is left. */
  readonly purged?: true;
  /** Kept beside the entry `of`, whose other version was newer; `seen` is that of the version kept here. */
  readonly conflict?: { readonly of: string; readonly seen: Seen };
  /** Null when purged. */
  readonly body: Body | null;
}

/** An entry as stored, whatever its state. */
export type AnyRecord = { [K in Kind]: Form<K, Bodies[K]> }[Kind];
/** An entry with its contents: what screens work with. */
export type Entry<K extends Kind = Kind> = {
  [P in K]: Form<P, Bodies[P]> & { readonly body: Bodies[P] };
}[K];

const clock = v.pipe(
  v.string(),
  v.regex(CLOCK_FORM),
  v.check((text) => msOf(text) < LATEST_MS, 'beyond the year 10000'),
);
const device = v.pipe(v.string(), v.regex(ID_FORM));
const instant = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?Z$/));
const seen = v.pipe(v.record(device, clock), v.maxEntries(1000));

const form = {
  id: v.pipe(v.string(), v.regex(ID_FORM)),
  schema: v.literal(SCHEMA),
  created: instant,
  changed: instant,
  clock,
  device,
  seen,
  deletedAt: v.exactOptional(instant),
  purged: v.exactOptional(v.literal(true)),
  conflict: v.exactOptional(v.strictObject({ of: device, seen })),
};

const FORMS = Object.fromEntries(
  KINDS.map((kind) => [
    kind,
    v.pipe(
      v.strictObject({
        ...form,
        kind: v.literal(kind),
        body: v.nullable<v.GenericSchema<unknown, unknown>>(BODY_SCHEMAS[kind]),
      }),
      v.check((record) => (record.body === null) === (record.purged === true), 'no contents'),
      v.check((record) => record.purged !== true || record.deletedAt !== undefined, 'not deleted'),
      v.check((record) => Object.hasOwn(record.seen, record.device), 'does not know itself'),
      v.check((record) => record.seen[record.device] === record.clock, 'does not know itself'),
    ),
  ]),
) as unknown as Readonly<Record<Kind, v.GenericSchema<unknown, AnyRecord>>>;

export const isKind = (kind: unknown): kind is Kind =>
  typeof kind === 'string' && Object.hasOwn(BODY_SCHEMAS, kind);

/** Reads a stored or received entry: exactly the form, nothing more, or a fault that says where. */
export function readRecord(raw: unknown): Result<AnyRecord, BookFault> {
  if (typeof raw !== 'object' || raw === null) return fail({ code: 'bad-record', where: '' });
  const { schema, kind } = raw as { schema?: unknown; kind?: unknown };
  if (typeof schema === 'number' && schema > SCHEMA) return fail({ code: 'newer-record' });
  if (!isKind(kind)) return fail({ code: 'bad-record', where: 'kind' });
  const read = v.safeParse(FORMS[kind], raw, { abortEarly: true });
  if (read.success) return ok(read.output);
  const issue = read.issues[0];
  return fail({
    code: 'bad-record',
    where: `${v.getDotPath(issue) ?? ''} ${issue.message}`.trim(),
  });
}

export const hasBody = (record: AnyRecord): record is Entry => record.body !== null;

/** The photographs, masks and label maps that an entry needs. */
export function filesOf(record: AnyRecord): readonly FileRef[] {
  if (!hasBody(record)) return [];
  switch (record.kind) {
    case 'specimen': {
      const { photo, mask, gathered } = record.body;
      return [photo, mask, gathered?.labels].filter((ref) => ref !== undefined);
    }
    case 'swatch':
      return record.body.photo ? [record.body.photo] : [];
    default:
      return [];
  }
}
