import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sheetPaletteMarkup } from '../../src/drawing/palette-markup.ts';
import { drawPalette, paletteWords, pilesOf } from '../../src/drawing/palette-svg.ts';
import { markup } from '../../src/markup.ts';
import { plainNumber } from '../../src/number-format.ts';
import { sheetOf } from '../../src/sheet/morning-sheet.ts';
import { sheetDocument, sheetPage } from '../../src/sheet/page-html.ts';
import { askedOf, passageOf, pileOf, planned, STARTER } from '../palette/made.ts';

const STYLE = readFileSync(resolve(import.meta.dirname, '../../src/sheet/sheet.css'), 'utf8');
const TRICKY = '</title><script>alert("1")</script> & \'brush\'';

function page(name: string, rules = {}) {
  const asked = askedOf(
    [
      passageOf(name, [
        pileOf(name, { lead_white: 3, raw_umber: 1 }),
        pileOf('glaze', { madder_lake: 1 }, { film: 'glaze' }),
      ]),
    ],
    rules,
  );
  const day = planned(asked, STARTER);
  const board = sheetPaletteMarkup(day.palettes[0]!, day);
  return {
    day,
    board,
    html: sheetPage(sheetOf(day, 0, STARTER, plainNumber), board, plainNumber).html,
  };
}

describe('a sheet as a page', () => {
  test('says everything that the work order lists', () => {
    const { html } = page('Water', { people: ['Ines'] });
    for (const words of [
      'Prepare, in this order',
      'lead: slab, knife and rag of its own',
      'guide, not for matching',
      'dab the accepted pile',
      'lots<i>',
      'Cautions',
      'Toxic.',
      'Oily rags',
      'Solvents',
      'safety data sheet',
      'local codes',
      'licensed practice',
      'At the end of the day',
      'Scrapings',
      'Data sheet read',
      'prepared',
    ])
      expect(html).toContain(words);
  });

  test('typed words cannot become markup', () => {
    const { html, day } = page(TRICKY, { people: [TRICKY] });
    expect(html).not.toContain('<script');
    expect(html).toContain('&lt;script&gt;');
    expect(paletteWords(day.palettes[0]!, day.rules)).toContain(TRICKY);
  });

  test('asks for nothing outside, runs nothing, and carries no style of its own', () => {
    const { html } = page('Water');
    const document = sheetDocument([{ html }], 'Sheet', STYLE);
    expect(document).toContain(STYLE.trim().slice(0, 60));
    expect(document).toContain('<svg');
    expect(document).not.toMatch(/<script|<link|<img|@import|url\(|javascript:/);
    expect(document.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
    // A strict policy refuses style attributes: the screens use the page as it is.
    expect(html).not.toMatch(/\sstyle=/);
  });

  test('swatches are drawn, one for each pile', () => {
    const { html } = page('Water');
    expect(html.match(/class="swatch"/g)).toHaveLength(2);
    expect(html).toMatch(/<rect [^>]*fill="#[0-9a-f]{6}"/);
    const grounds = [...STYLE.matchAll(/background[a-z-]*: *([^;]*);/g)].map(([, value]) => value);
    expect(new Set(grounds)).toEqual(new Set(['#fff', '#8c8c8c']));
  });
});

describe('the palette in ink', () => {
  test.each(['left', 'right'] as const)('held in the %s hand, every heap has its name', (hand) => {
    const { board, day } = page('Water', { hand, shape: 'square' });
    const { pigments, mixed } = pilesOf(day.palettes[0]!);
    expect([...pigments, ...mixed].map(({ key }) => key)).toHaveLength(5);
    // What is drawn, apart from the title that tells of it.
    const drawn = [...board.html.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);
    for (const { name } of [...pigments, ...mixed])
      for (const word of name.split(' ')) expect(drawn.join(' ')).toContain(word);
    expect(board.html.match(/data-pile=/g)).toHaveLength(pigments.length + mixed.length);
    expect(board.html).toContain(`held in the ${hand} hand`);
  });

  test('mixed piles keep the order of the palette', () => {
    const { board, day } = page('Water');
    const keys = [...board.html.matchAll(/data-pile="([^"]*)"/g)].map(([, key]) => key);
    const { pigments, mixed } = pilesOf(day.palettes[0]!);
    expect(keys).toEqual([...pigments, ...mixed].map(({ key }) => key));
  });

  test('an empty palette is still a palette', () => {
    const laid = {
      width: 10,
      height: 10,
      mirrored: false,
      board: { height: 10, outline: 'M0 0Z', hole: { x: 1, y: 1, rx: 1, ry: 1 } },
      seats: [],
      key: [],
    };
    const { html } = drawPalette(laid, { pigments: [], mixed: [] }, 'Nothing');
    expect(html).toMatch(/^<svg .*<title>Nothing<\/title>.*<\/svg>$/);
  });
});

test('markup escapes what it is given, and nothing twice', () => {
  const inner = markup`<b>${'<&>"'}</b>`;
  expect(markup`<p title="${'"'}">${inner}${[inner]}${3}</p>`.html).toBe(
    '<p title="&quot;"><b>&lt;&amp;&gt;&quot;</b><b>&lt;&amp;&gt;&quot;</b>3</p>',
  );
});
