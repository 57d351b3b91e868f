import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { nextVersionMetadata } from '../../../src/book/merge/next-version.ts';
import { summaryOfEntry } from '../../../src/book/schema/entry-summary.ts';
import { START } from '../../../src/book/schema/hybrid-clock.ts';
import { type Bodies, type Entry, KINDS, type Kind } from '../../../src/book/schema/record.ts';
import { csvOf, fileNameOf, jsonOf } from '../../../src/book/transfer/export-entry.ts';
import { bodies } from '../kinds.ts';
import { harmonyBodyOf, NOON } from '../made.ts';

const marks = nextVersionMetadata('device-0001', START, NOON, []);
const entryOf = <K extends Kind>(kind: K, body: Bodies[K] = bodies[kind]) =>
  ({ id: 'entry-0001', kind, created: marks.changed, ...marks, body }) as unknown as Entry;

test.each(KINDS)('a %s goes out as a table and as JSON', (kind) => {
  const { data, errors } = Papa.parse<Record<string, string>>(csvOf(entryOf(kind)), {
    header: true,
  });
  expect(errors).toEqual([]);
  expect(data.length).toBeGreaterThan(0);
  const said = JSON.parse(jsonOf(entryOf(kind)));
  expect(said).toMatchObject({ format: 'kingcup-entry', version: 1, kind, body: bodies[kind] });
});

test('a harmony has a row for each colour, with its mixture in parts', () => {
  const [head, first, second] = csvOf(entryOf('harmony')).split('\n');
  expect(head).toMatch(/^colour,hex,L\*,a\*,b\*,share,parts,/);
  expect(first).toMatch(/^"near green earth, deeper",#[0-9a-f]{6},41,-12,17,0.62,/);
  expect(first).toContain('1 green-earth + 2 raw-umber');
  expect(second).toContain('near vermilion');
});

test('a let-down is told as it lies on the bench, and found by what is in it', () => {
  const [colour] = harmonyBodyOf('x').colours;
  const letDown = {
    letDowns: [{ pigment: 'bone-black', white: 'lead-white', parts: 1 as const, whiteParts: 10 }],
    parts: [
      { pigment: 'lead-white', parts: 12, letDown: false },
      { pigment: 'bone-black', parts: 1, letDown: true },
    ],
    lab: [80, 0, 0] as const,
    deltaE00: 0.5,
  };
  const mixture = { ...colour!.mixture!, letDown };
  const entry = entryOf('harmony', harmonyBodyOf('x', { colours: [{ ...colour!, mixture }] }));
  const [row] = Papa.parse<Record<string, string>>(csvOf(entry), { header: true }).data;
  expect(row).toMatchObject({
    parts: '12 lead-white + 1 bone-black (let down 1 to 10 lead-white)',
    'mixed L*': '80',
    'difference (CIEDE2000)': '0.5',
  });
  expect(summaryOfEntry(entry)?.pigments).toEqual(['lead-white', 'bone-black']);
});

test('a name that a spreadsheet would run is made harmless, a negative number stays one', () => {
  const [colour] = harmonyBodyOf('x').colours;
  const evil = { ...colour!, name: '=HYPERLINK("http://x.invalid")' };
  const csv = csvOf(entryOf('harmony', harmonyBodyOf('x', { colours: [evil] })));
  expect(csv.split('\n')[1]).toMatch(/^"'=HYPERLINK/);
  expect(csv).toContain(',-12,');
});

test.each([
  ['Äpfel & Birnen', 'harmony-apfel-birnen-2031-05-17.csv'],
  ['../../etc/passwd', 'harmony-etc-passwd-2031-05-17.csv'],
  ['<svg onload=alert(1)>', 'harmony-svg-onload-alert-1-2031-05-17.csv'],
  ['CON', 'harmony-con-2031-05-17.csv'],
  ['', 'harmony-2031-05-17.csv'],
  ['雨', 'harmony-2031-05-17.csv'],
  [`${'x'.repeat(300)}\u202egpj.exe`, `harmony-${'x'.repeat(60)}-2031-05-17.csv`],
])('%s is named so that every system takes it', (name, file) => {
  expect(fileNameOf(entryOf('harmony', harmonyBodyOf(name)), 'csv')).toBe(file);
});
