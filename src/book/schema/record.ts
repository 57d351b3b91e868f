import * as v from 'valibot';
import { fail, ok, type Result } from '../../result.ts';
import type { BookFault } from './book-fault.ts';
import { type CardBody, type CurvesBody, cardBody, curvesBody } from './calibration.ts';
import { type DraperyBody, draperyBody, type FormulaBody, formulaBody } from './drapery.ts';
import { type FileRef, ID_FORM } from './fields.ts';
import { type HarmonyBody, harmonyBody } from './harmony.ts';
import { CLOCK_FORM, type Clock, LATEST_MS, msOf } from './hybrid-clock.ts';
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
import {
  type ClockInterval,
  includesVersions,
  type VersionVector,
  wellFormed,
} from './version-vector.ts';

/** The contents of each kind of entry. */
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
  card: CardBody;
  curves: CurvesBody;
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
  card: cardBody,
  curves: curvesBody,
  pile: pileBody,
  leftover: leftoverBody,
};
export const KINDS = Object.keys(BODY_SCHEMAS) as readonly Kind[];

/** Step n migrates an entry from schema n to n + 1. Never edit a step that has shipped. */
const UPGRADES: readonly Upgrade[] = [];
type Upgrade = (older: Readonly<Record<string, unknown>>) => Record<string, unknown>;
/** The current schema version. */
export const SCHEMA = UPGRADES.length + 1;

/** The version of an entry that a conflict copy preserves or came from. */
export interface Conflict {
  readonly of: string;
  /**
   * Version vector of the preserved version. While the copy's own `seen` equals it, nobody has
   * edited the copy.
   */
  readonly seen: VersionVector;
  /** Set when the preserved version was itself a conflict copy. */
  readonly before?: Conflict;
  /** The painter decided to keep both versions, so this is an entry of its own. */
  readonly settled?: true;
}

/** The common form of all entries. */
interface Form<K extends Kind, Body> {
  readonly id: string;
  readonly kind: K;
  readonly schema: number;
  /** ISO date and time. */
  readonly created: string;
  readonly changed: string;
  /** Of this version; together with `device` it identifies the version globally. */
  readonly clock: Clock;
  readonly device: string;
  /**
   * Version vector: the versions known when this one was written, itself included. Distinguishes
   * "newer" from "concurrent".
   */
  readonly seen: VersionVector;
  /** ISO date and time of the move to the bin; absent outside the bin. */
  readonly deletedAt?: string;
  /** Set when the entry was purged from the bin: only this tombstone is left. */
  readonly purged?: true;
  /** Set on a conflict copy: a newer version has the original id. */
  readonly conflict?: Conflict;
  /** Null when purged. */
  readonly body: Body | null;
}

/** An entry as stored, possibly deleted or purged. */
export type AnyRecord = { [K in Kind]: Form<K, Bodies[K]> }[Kind];
/** An entry with its contents, as screens use it. */
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
const span: v.GenericSchema<unknown, ClockInterval> = v.strictTuple([clock, clock]);
const seen: v.GenericSchema<unknown, VersionVector> = v.pipe(
  v.record(device, v.pipe(v.array(span), v.minLength(1), v.maxLength(10_000))),
  v.maxEntries(1000),
);

const conflict: v.GenericSchema<unknown, Conflict> = v.strictObject({
  of: device,
  seen,
  before: v.exactOptional(v.lazy(() => conflict)),
  settled: v.exactOptional(v.literal(true)),
});

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
  conflict: v.exactOptional(conflict),
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
      v.check(({ seen, device, clock }) => wellFormed(seen, device, clock), 'does not know itself'),
      v.check(
        ({ conflict, seen }) => !conflict || includesVersions(seen, conflict.seen),
        'does not know what it keeps',
      ),
    ),
  ]),
) as unknown as Readonly<Record<Kind, v.GenericSchema<unknown, AnyRecord>>>;

/** Migrates an entry of an older schema step by step. Returns anything else unchanged. */
export function upgraded(raw: object, steps: readonly Upgrade[] = UPGRADES): object {
  let record = raw as Record<string, unknown>;
  const from = record.schema;
  if (typeof from !== 'number' || !Number.isInteger(from) || from < 1) return raw;
  for (const [i, step] of steps.slice(from - 1).entries())
    record = { ...step(record), schema: from + i + 1 };
  return record;
}

const isKind = (kind: unknown): kind is Kind =>
  typeof kind === 'string' && Object.hasOwn(BODY_SCHEMAS, kind);

/**
 * Validates and migrates a stored or received entry. Unknown fields are errors.
 * @returns the fault `newer-record` for a newer schema, otherwise `bad-record` with the path that
 *   failed
 */
export function readRecord(stored: unknown): Result<AnyRecord, BookFault> {
  if (typeof stored !== 'object' || stored === null) return fail({ code: 'bad-record', where: '' });
  const raw = upgraded(stored);
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

/** References to the photographs, masks and label maps that an entry needs. */
export function filesOf(record: AnyRecord): readonly FileRef[] {
  if (!hasBody(record)) return [];
  switch (record.kind) {
    case 'specimen': {
      const { photo, mask, gathered } = record.body;
      return [photo, mask, gathered?.labels].filter((ref) => ref !== undefined);
    }
    case 'swatch':
      return record.body.photo ? [record.body.photo] : [];
    case 'card':
      return record.body.reading?.photo ? [record.body.reading.photo] : [];
    default:
      return [];
  }
}

/** Ids of the entries that this one was made from; a copy of it includes them. */
export function linksOf(record: AnyRecord): readonly string[] {
  if (!hasBody(record)) return [];
  switch (record.kind) {
    case 'harmony':
      return present([record.body.specimen]);
    case 'drapery':
      return present([record.body.harmony]);
    case 'formula':
      return present([record.body.from]);
    case 'passage':
      return present([record.body.from, ...record.body.piles.map(({ from }) => from ?? null)]);
    case 'palette':
      return record.body.passages;
    case 'sheet':
      return record.body.palettes;
    default:
      return [];
  }
}

const present = (ids: readonly (string | null)[]): readonly string[] =>
  ids.filter((id) => id !== null);
