import { afterAll, expect, test, vi } from 'vitest';

// As a reader has it whose decimals stand behind a comma.
const Format = Intl.NumberFormat;
Intl.NumberFormat = class extends Format {
  constructor(_: unknown, how?: Intl.NumberFormatOptions) {
    super('de', how);
  }
} as typeof Format;
afterAll(() => {
  Intl.NumberFormat = Format;
  vi.resetModules();
});
// Figures are set in one manner as long as the page stands: a page of its own for this one.
vi.resetModules();
const { withLocalFigures, localiseFiguresIn } = await import('../../src/ui/state/locale-format.ts');

const shown = (html: string, lots: readonly string[]): string => {
  const page = document.createElement('div');
  page.innerHTML = html;
  localiseFiguresIn(page, lots);
  return page.textContent ?? '';
};

test('figures are set in the reader’s manner', () => {
  expect(withLocalFigures('1.25 cm³ of it. 3 more.')).toBe('1,25 cm³ of it. 3 more.');
  expect(shown('<td>7.2</td> <td>17.25 g</td>', [])).toBe('7,2 17,25 g');
});

test.each([
  ['<td><b>Red earth</b> weigh from powder · lot 7.2</td><td>7.2 g</td>', '· lot 7.27,2 g'],
  ['<td>weigh · fine, lot 7.2</td><td class="paste">7.2</td>', 'fine, lot 7.27,2'],
  ['<p>Laid at 0.25 mm. Lots 3, 8.1/b, 7.2; date 1.5</p>', '0,25 mm. Lots 3, 8.1/b, 7.2; date 1,5'],
  ['<li>Lead white, lot 7.2: read, 1.5 g</li>', 'lot 7.2: read, 1,5 g'],
  ['<li>lot 7.25 is another</li>', 'lot 7,25 is another'],
  ['<h1>Sky 1.5</h1><span class="pilename">Sky 1.2</span> 1.2 cm³', 'Sky 1.5Sky 1.2 1,2 cm³'],
])('what the painter wrote stays as it was written: %s', (html, words) => {
  expect(shown(html, ['7.2', 'lot 8.1/b', '3', '(new']).endsWith(words)).toBe(true);
});
