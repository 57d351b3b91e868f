import { afterAll, expect, test, vi } from 'vitest';

// As a reader has it whose decimals stand behind a point, wherever this machine stands.
const Format = Intl.NumberFormat;
Intl.NumberFormat = class extends Format {
  constructor(_: unknown, how?: Intl.NumberFormatOptions) {
    super('en', how);
  }
} as typeof Format;
afterAll(() => {
  Intl.NumberFormat = Format;
  vi.resetModules();
});
// Figures are set in one manner as long as the page stands: a page of its own for this one.
vi.resetModules();
const { formatNumber, inchesOf, readLength, formatForField } = await import(
  '../../../src/ui/state/locale-format.ts'
);

// An inch is 2.54 cm exactly (international yard and pound agreement, 1959).
test.each([
  ['60', 60],
  ['60,5', 60.5],
  [' 60.5 cm ', 60.5],
  ['24 in', 60.96],
  ['24"', 60.96],
  ['23,5 inches', 59.69],
  ['1″', 2.54],
])('a length written as %s is %d cm', (text, cm) => {
  expect(readLength(text)).toBeCloseTo(cm, 10);
});

test.each(['', 'wide', '24 feet', '-3', '1.2.3', 'in'])('“%s” is no length', (text) => {
  expect(readLength(text)).toBeNull();
});

test('what is shown in inches is what was written', () => {
  expect(inchesOf(readLength('17.75 in')!)).toBeCloseTo(17.75, 12);
});

test('a field shows no more than it takes back', () => {
  expect(formatForField(12_345.678_9)).toBe('12345.679');
  expect(formatNumber(12_345.6, 1)).toBe('12,345.6');
});
