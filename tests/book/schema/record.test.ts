import { describe, expect, test } from 'vitest';
import { nextVersionMetadata } from '../../../src/book/merge/next-version.ts';
import { summaryOfEntry } from '../../../src/book/schema/entry-summary.ts';
import { START } from '../../../src/book/schema/hybrid-clock.ts';
import {
  type AnyRecord,
  filesOf,
  KINDS,
  type Kind,
  linksOf,
  readRecord,
} from '../../../src/book/schema/record.ts';
import { bodies, paintsOf, smallShelf } from '../kinds.ts';
import { NOON } from '../made.ts';

const marks = nextVersionMetadata('device-0001', START, NOON, []);
const recordOf = (kind: Kind): AnyRecord => {
  const id = `${kind}-0001`.padEnd(8, '0');
  return { id, kind, created: marks.changed, ...marks, body: bodies[kind] } as AnyRecord;
};

describe.each(KINDS)('a %s', (kind) => {
  const record = recordOf(kind);

  test('is accepted, and is the same after a copy as JSON and after storing', () => {
    expect(readRecord(record)).toEqual({ ok: true, value: record });
    expect(readRecord(JSON.parse(JSON.stringify(record)))).toEqual({ ok: true, value: record });
    expect(structuredClone(record)).toEqual(record);
  });

  test('is refused with any field missing, wrong or too many', () => {
    const body = record.body as unknown as Record<string, unknown>;
    for (const field of Object.keys(body)) {
      for (const wrong of [Number.NaN, {}, () => 1])
        expect(readRecord({ ...record, body: { ...body, [field]: wrong } }).ok).toBe(false);
    }
    expect(readRecord({ ...record, body: { ...body, more: 1 } }).ok).toBe(false);
    for (const field of Object.keys(record)) {
      const { [field]: _, ...rest } = record as unknown as Record<string, unknown>;
      expect(readRecord(rest).ok).toBe(false);
    }
  });

  test('has a card with its name, its words and its pigments', () => {
    const card = summaryOfEntry(record)!;
    expect(card.name).toBe(bodies[kind].name);
    expect(card.words).toContain(bodies[kind].note);
    const mixed = JSON.stringify(bodies[kind]).includes('"red-earth"');
    expect(card.pigments.includes('red-earth')).toBe(mixed);
    expect(
      summaryOfEntry({ ...record, deletedAt: marks.changed, purged: true, body: null }),
    ).toBeNull();
    const shares = card.colours.reduce((sum, { share }) => sum + share, 0);
    expect(shares).toBeLessThanOrEqual(1 + 1e-9);
    // A sheet and a shelf have no colours to show.
    const colourless = kind === 'sheet' || kind === 'shelf';
    expect(shares > 0).toBe(!colourless);
  });
});

test('a harmony keeps the wish that its mixtures were found under', () => {
  const wish = {
    ...{ only: ['red-earth'], leaveOut: ['smalt'], hazard: 'toxic', mustHold: [] },
    ...{ noBlack: true, most: 3, coarse: true, keep: 'hue' },
  };
  const record = recordOf('harmony');
  const kept = { ...record, body: { ...record.body, wish } };
  expect(readRecord(kept)).toEqual({ ok: true, value: kept });
  for (const wrong of [{ most: 7 }, { keep: 'soul' }, { hazard: 'low' }, { only: 'all' }, { x: 1 }])
    expect(readRecord({ ...kept, body: { ...kept.body, wish: { ...wish, ...wrong } } }).ok).toBe(
      false,
    );
});

test('knows the files and the entries that it needs', () => {
  const letters = (kind: Kind) => filesOf(recordOf(kind)).map(({ file }) => file[0]);
  expect(letters('specimen')).toEqual(['a', 'b', 'c']);
  expect(letters('swatch')).toEqual(['a']);
  expect(KINDS.flatMap((kind) => linksOf(recordOf(kind)))).toEqual([
    ...['specimen-0001', 'harmony-0001', 'drapery-0001', 'passage-0001', 'palette-0001'],
  ]);
});

describe('the form', () => {
  const record = recordOf('harmony');
  const codeOf = (raw: unknown) => {
    const read = readRecord(raw);
    return read.ok ? 'fine' : read.fault.code;
  };
  test.each([
    ['of a newer schema', { schema: 2 }, 'newer-record'],
    ['of no known kind', { kind: 'toString' }, 'bad-record'],
    ['deleted without a body', { body: null, deletedAt: marks.changed }, 'bad-record'],
    ['purged with one', { purged: true, deletedAt: marks.changed }, 'bad-record'],
    ['purged and not deleted', { purged: true, body: null }, 'bad-record'],
    ['purged', { purged: true, body: null, deletedAt: marks.changed }, 'fine'],
    ['that does not know itself', { seen: { 'device-0002': [[START, START]] } }, 'bad-record'],
    ['with an id that could be a path', { id: '../../../etc' }, 'bad-record'],
    ['with a date of its own', { created: 'yesterday' }, 'bad-record'],
  ])('%s', (_, change, code) => {
    expect(codeOf({ ...record, ...change })).toBe(code);
  });

  test('passes on nothing that it does not know', () => {
    const raw = JSON.parse(
      JSON.stringify(record).replace('"body":{', '"body":{"__proto__":{"x":1},'),
    );
    const read = readRecord(raw);
    expect(read).toMatchObject({ ok: false, fault: { code: 'bad-record' } });
    expect(codeOf(null)).toBe('bad-record');
    expect(codeOf([])).toBe('bad-record');
  });
});

test('a shelf’s paints come back as the mixture search knows them', () => {
  expect(paintsOf(bodies.shelf)).toEqual(smallShelf.paints);
});
