import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../../src/colour/difference.ts';
import { spectrum } from '../../../src/colour/grid.ts';
import { labOf } from '../../../src/colour/lab.ts';
import { shelfFaultWords } from '../../../src/messages/shelf-file-faults.ts';
import { plainNumber } from '../../../src/number-format.ts';
import { opaque } from '../../../src/optics/opaque.ts';
import { addSurface } from '../../../src/optics/surface.ts';
import { readShelf, readSurface } from '../../../src/pigment/import/read-shelf.ts';
import type { ShelfFault } from '../../../src/pigment/import/shelf-fault.ts';
import type { Shelf } from '../../../src/pigment/shelf.ts';
import { describeShared, readShared } from '../../shared.ts';
import { remarkWords } from '../remark-words.ts';

const range = (first: number, last: number, step: number) =>
  Array.from({ length: Math.round((last - first) / step) + 1 }, (_, i) => first + i * step);
/** A smooth curve with its own value at every wavelength. */
const K = (nm: number) => 0.2 + (730 - nm) / 1000;
const S = (nm: number) => 0.5 + (nm - 380) / 2000;

/** A CSV of one paint, or of several alike, before something is spoiled in it. */
function csv(nms: readonly number[], names: readonly string[] = ['Ochre'], comments = ''): string {
  const rows = names.flatMap((name, i) => [
    `${i + 1},${name},K,${nms.map((nm) => K(nm).toFixed(6)).join(',')}`,
    `${i + 1},${name},S,${nms.map((nm) => S(nm).toFixed(6)).join(',')}`,
  ]);
  return `${comments}index,pigment,coefficient,${nms.join(',')}\n${rows.join('\n')}\n`;
}
const TENS = range(380, 730, 10);

function read(text: string, surface?: string): Shelf {
  const constants = surface === undefined ? undefined : readSurface(surface);
  if (constants?.ok === false) throw new Error(constants.fault.code);
  const shelf = readShelf(text, {
    name: 'test',
    ...(constants === undefined ? {} : { surface: constants.value }),
  });
  if (!shelf.ok) throw new Error(shelfFaultWords(shelf.fault, plainNumber));
  return shelf.value;
}
function faultOf(text: string): ShelfFault {
  const shelf = readShelf(text, { name: 'test' });
  if (shelf.ok) throw new Error('it was read');
  return shelf.fault;
}

describeShared('the reference shelves', () => {
  // README of the reference data, worked examples (with its own weights; ours are of E308 type).
  test('1 part yellow ochre and 4 parts titanium white of the acrylic shelf', () => {
    const shelf = read(readShared('reference/artist-ks-rit2005.csv'));
    expect(shelf.paints).toHaveLength(27);
    expect(shelf.white).toBe('Titanium white');
    expect(shelf.surface).toEqual({ k1: 0.03, k2: 0.65, specular: 'included' });
    const paint = (name: string) => shelf.paints.find((p) => p.pigment === name)!.paint;
    const R = opaque([1, 4], [paint('Yellow ochre'), paint('Titanium white')], spectrum());
    const [L, a, b] = labOf(addSurface(R, shelf.surface));
    expect(Math.hypot(L - 84.02, a - 5.33, b - 27.3)).toBeLessThan(0.2);
  });

  test('1 part bone black and 4 parts titanium white of the oil shelf, 380 and 390 carried flat', () => {
    const shelf = read(readShared('reference/oil-ks-delft.csv'));
    expect(shelf.paints).toHaveLength(10);
    expect(shelf.basis).toBe('mass');
    expect(shelf.white).toBe('Titanium white');
    expect(remarkWords(shelf.remarks)[0]).toContain('carried on flat to 380');
    const paint = (name: string) => shelf.paints.find((p) => p.pigment === name)!.paint;
    expect(paint('Bone black').K[0]).toBe(paint('Bone black').K[2]);
    const R = opaque([1, 4], [paint('Bone black'), paint('Titanium white')], spectrum());
    const [L, a, b] = labOf(addSurface(R, shelf.surface));
    expect(Math.hypot(L - 64.3, a + 0.1, b + 5.39)).toBeLessThan(0.2);
  });
});

describeShared('measured shelves on coarser grids', () => {
  const text = readShared('reference/artist-ks-rit2005.csv');
  const fine = read(text);

  /** The same file with only the wavelengths that are kept. */
  const thinned = (keep: (nm: number) => boolean) => {
    const lines = text.split('\n');
    const heading = lines.find((line) => line.startsWith('index'))!.split(',');
    return lines
      .map((line) =>
        line.startsWith('#')
          ? line
          : line
              .split(',')
              .filter((_, i) => i < 3 || keep(Number(heading[i])))
              .join(','),
      )
      .join('\n');
  };
  const colour = (shelf: Shelf, name: string, white: number) => {
    const of = (one: string) => shelf.paints.find(({ pigment }) => pigment === one)!.paint;
    const R = opaque([1, white], [of(name), of('Titanium white')], spectrum());
    return labOf(addSurface(R, shelf.surface));
  };

  // What 20 nm cost: the masstones and 1 : 4 tints of 27 measured paints, against their 10 nm.
  test('every 20 nm', () => {
    const coarse = read(thinned((nm) => (nm - 380) % 20 === 0 || nm === 730));
    const off = fine.paints
      .flatMap(({ pigment }) =>
        [0, 4].map((white) =>
          deltaE00(colour(fine, pigment, white), colour(coarse, pigment, white)),
        ),
      )
      .toSorted((p, q) => p - q);
    console.log(`20 nm: median ${off[27]!.toFixed(2)}, most ${off.at(-1)!.toFixed(2)}`);
    expect(off[27]).toBeLessThan(0.5);
    expect(off.at(-1)).toBeLessThan(3);
  });

  test('from 400 to 700 alone', () => {
    const short = read(thinned((nm) => nm >= 400 && nm <= 700));
    const off = fine.paints.map(({ pigment }) =>
      deltaE00(colour(fine, pigment, 0), colour(short, pigment, 0)),
    );
    console.log(`400-700 nm: most ${Math.max(...off).toFixed(2)}`);
    expect(Math.max(...off)).toBeLessThan(0.5);
  });
});

describe('grids', () => {
  const own = (nms: number[]) => read(csv(nms)).paints[0]!.paint;

  test('our own grid is taken as it stands', () => {
    const paint = own(TENS);
    TENS.forEach((nm, band) => {
      expect(paint.K[band]).toBeCloseTo(K(nm), 6);
      expect(paint.S[band]).toBeCloseTo(S(nm), 6);
    });
    const remarks = remarkWords(read(csv(TENS)).remarks).join(' ');
    expect(remarks).toContain('states no surface');
    expect(remarks).not.toMatch(/\bnm\b/);
  });

  test.each([5, 20, 4, 2.5, 3])(
    'a grid of %d nm is brought to tens, and a remark says so',
    (step) => {
      const nms = range(380, 740, step).filter((nm) => nm <= 740);
      const paint = own(nms);
      // Straight lines must come through any resampling unharmed, the ends apart.
      TENS.slice(1, -1).forEach((nm, i) => {
        expect(paint.K[i + 1]).toBeCloseTo(K(nm), 5);
        expect(paint.S[i + 1]).toBeCloseTo(S(nm), 5);
      });
      expect(remarkWords(read(csv(nms)).remarks).join(' ')).toContain(`every ${step} nm`);
    },
  );

  test('a grid that has our bands keeps its values there, however sharp', () => {
    const nms = range(380, 730, 5);
    const sharp = (nm: number) => (nm === 550 ? 5 : 0.01);
    const text = `pigment,coefficient,${nms.join(',')}\nRed,K,${nms.map(sharp).join(',')}\nRed,S,${nms.map(() => 0.3).join(',')}`;
    expect(read(text).paints[0]!.paint.K.slice(16, 19)).toEqual(Float64Array.of(0.01, 5, 0.01));
  });

  test('bands between ours are joined without overshoot', () => {
    const nms = range(395, 715, 10);
    const paint = own(nms);
    expect(paint.K[2]).toBeCloseTo(K(400), 5);
    expect(Math.max(...paint.K)).toBeLessThanOrEqual(K(395) + 1e-6);
    expect(remarkWords(read(csv(nms)).remarks.slice(0, 3)).join(' ')).toMatch(
      /395 nm.*715 nm.*every 10 nm/,
    );
  });

  test('a steep edge every 20 nm stays above zero', () => {
    const nms = range(380, 740, 20);
    const steep = (nm: number) => (nm < 600 ? 5 : 0.0001);
    const text = `pigment,coefficient,${nms.join(',')}\nRed,K,${nms.map(steep).join(',')}\nRed,S,${nms.map(() => 0.3).join(',')}`;
    expect(Math.min(...read(text).paints[0]!.paint.K)).toBeGreaterThan(0);
  });

  test('400 to 700 is enough', () => {
    const shelf = read(csv(range(400, 700, 10)));
    expect(remarkWords(shelf.remarks.slice(0, 2)).join(' ')).toMatch(
      /start at 400.*380.*end at 700.*730/,
    );
    const { K: k } = shelf.paints[0]!.paint;
    expect([k[0], k[1]]).toEqual([k[2], k[2]]);
    expect([k[33], k[34], k[35]]).toEqual([k[32], k[32], k[32]]);
  });

  test('less is refused with the reason', () => {
    expect(faultOf(csv(range(410, 700, 10)))).toEqual({
      code: 'shelf-grid-short',
      firstNm: 410,
      lastNm: 700,
    });
    expect(faultOf(csv(range(400, 690, 10))).code).toBe('shelf-grid-short');
    expect(faultOf(csv([400])).code).toBe('shelf-grid-short');
    expect(faultOf(csv(range(380, 740, 40))).code).toBe('shelf-grid-coarse');
    expect(faultOf(csv([...range(380, 500, 10), ...range(540, 730, 10)]))).toEqual({
      code: 'shelf-grid-coarse',
      fromNm: 500,
      toNm: 540,
    });
    expect(faultOf(csv(TENS.toReversed())).code).toBe('shelf-grid-order');
    expect(faultOf(csv([380, 380, ...TENS.slice(1)])).code).toBe('shelf-grid-order');
  });
});

describe('how files are written', () => {
  test('a surface, and one that overrides it', () => {
    const text = csv(TENS, ['Ochre'], '# surface: 0.04, 0.6\n# basis: volume\n');
    expect(read(text).surface).toEqual({ k1: 0.04, k2: 0.6, specular: 'included' });
    expect(read(text).basis).toBe('volume');
    expect(read(text, '0,0').surface).toEqual({ k1: 0, k2: 0, specular: 'included' });
    expect(remarkWords(read(csv(TENS)).remarks).join(' ')).toContain('states no surface');
  });

  test('comment lines as a spreadsheet leaves them', () => {
    expect(read(csv(TENS, ['Ochre'], '# surface: 0.04,0.6,,,,\r\n')).surface.k1).toBe(0.04);
    expect(read(csv(TENS, ['Ochre'], '"# surface: 0.04,0.6",,\n')).surface.k2).toBe(0.6);
  });

  test('names are kept letter for letter', () => {
    const names = ['Ochre, French ("reddish")', 'Terre verte é', "Payne's grey"];
    const quoted = names.map((name) => `"${name.replaceAll('"', '""')}"`);
    expect(read(csv(TENS, quoted)).paints.map(({ pigment }) => pigment)).toEqual(names);
  });

  test('CRLF, a byte order mark, and blank lines', () => {
    const text = `\uFEFF${csv(TENS, ['Ochre', 'Red'], '# basis: mass\n')}\n\n`;
    const shelf = read(text.replaceAll('\n', '\r\n'));
    expect(shelf.paints.map(({ pigment }) => pigment)).toEqual(['Ochre', 'Red']);
    expect(shelf.basis).toBe('mass');
  });

  test('semicolons with decimal commas, and tabs', () => {
    const semicolons = csv(TENS).replaceAll(',', ';').replaceAll('.', ',');
    const tabs = csv(TENS).replaceAll(',', '\t');
    for (const text of [semicolons, tabs, `# surface: 0,03;0,65\n${semicolons}`])
      expect(read(text).paints[0]!.paint.K[17]).toBeCloseTo(K(550), 6);
  });

  test('other headings of the name, no index, wavelengths with their unit', () => {
    const text = csv(TENS).replace('index,pigment,coefficient', 'index,Colour,coefficient');
    expect(read(text).paints[0]!.pigment).toBe('Ochre');
    const nm = csv(TENS).replace(/(\d{3})(?=[,\n])/g, (all, n) =>
      Number(n) >= 380 ? `${n} nm` : all,
    );
    expect(read(nm.split('\n')[0] + csv(TENS).slice(csv(TENS).indexOf('\n'))).paints).toHaveLength(
      1,
    );
  });
});

describe('what is refused', () => {
  const spoil = (row: 'K' | 'S', nm: number, value: string) =>
    csv(TENS)
      .split('\n')
      .map((line) => {
        const cells = line.split(',');
        if (cells[2] === row) cells[3 + TENS.indexOf(nm)] = value;
        return cells.join(',');
      })
      .join('\n');

  test('a missing band', () => {
    expect(faultOf(spoil('K', 500, ''))).toEqual({
      code: 'shelf-band-missing',
      pigment: 'Ochre',
      row: 'K',
      nm: 500,
    });
    expect(faultOf(csv(TENS).replace(/,[^,]*\n$/, '\n')).code).toBe('shelf-band-missing');
  });
  test('a band that is no number', () => {
    for (const text of ['n/a', 'NaN', 'Infinity', '0x10', '1.2.3'])
      expect(faultOf(spoil('S', 610, text))).toMatchObject({
        code: 'shelf-band-text',
        nm: 610,
        text,
      });
  });
  test('K below 0', () => {
    expect(faultOf(spoil('K', 450, '-0.001'))).toMatchObject({
      code: 'shelf-K-negative',
      nm: 450,
      value: -0.001,
    });
  });
  test('K of 0 is read', () => {
    expect(read(spoil('K', 450, '0')).paints[0]!.paint.K[7]).toBe(0);
  });
  test('S of 0 or below', () => {
    expect(faultOf(spoil('S', 700, '0')).code).toBe('shelf-S-not-positive');
    expect(faultOf(spoil('S', 700, '-1')).code).toBe('shelf-S-not-positive');
  });
  test('per cent', () => {
    const percent = csv(TENS).replace(/(\d+\.\d+)/g, (n) => String(100 * Number(n)));
    expect(faultOf(percent)).toMatchObject({ code: 'shelf-percent', pigment: 'Ochre', row: 'S' });
    const black = `pigment,coefficient,${TENS.join(',')}\nSoot,K,${TENS.map(() => 700).join(',')}\nSoot,S,${TENS.map(() => 5).join(',')}`;
    expect(faultOf(black)).toMatchObject({ code: 'shelf-percent', row: 'K' });
  });
  test('a name twice', () => {
    expect(faultOf(csv(TENS, ['Ochre', 'Red', 'Ochre']))).toEqual({
      code: 'shelf-name-twice',
      pigment: 'Ochre',
    });
  });
  test('a paint without its K or its S, with another row, or without a name', () => {
    const lines = csv(TENS).trim().split('\n');
    expect(faultOf(lines.slice(0, 2).join('\n'))).toMatchObject({ row: 'S' });
    expect(faultOf([lines[0], lines[2]].join('\n'))).toMatchObject({ row: 'K' });
    expect(faultOf(csv(TENS).replace(',K,', ',R,'))).toMatchObject({
      code: 'shelf-row-unknown',
      row: 'R',
    });
    expect(faultOf(csv(TENS, ['']))).toEqual({ code: 'shelf-name-missing', row: 1 });
  });
  test('nothing at all', () => {
    for (const text of ['', '\uFEFF', ' \n\r\n', '# basis: mass\n', csv(TENS).split('\n')[0]!])
      expect(faultOf(text).code).toBe('shelf-empty');
  });
  test('something else', () => {
    for (const text of [
      'hello',
      'a,b\n1,2\n',
      'index,pigment,coefficient\n',
      '<svg/>',
      '\u0000\u0001',
    ])
      expect(faultOf(text).code).toBe('shelf-not-a-shelf');
  });
  test('a surface or basis that is none', () => {
    for (const text of ['0.03', '3,65', '0.03,1', '-0.1,0.5', 'glossy', '0.1,0.2,0.3'])
      expect(faultOf(csv(TENS, ['Ochre'], `# surface: ${text}\n`)).code).toBe('shelf-surface');
    expect(faultOf(csv(TENS, ['Ochre'], '# basis: weight\n')).code).toBe('shelf-basis');
  });
  test('every fault has a sentence without loose ends', () => {
    for (const text of [csv([400]), spoil('K', 500, ''), csv(TENS, ['A', 'A']), '', '{', 'x'])
      expect(shelfFaultWords(faultOf(text), plainNumber)).toMatch(/^.{20,}\.$/s);
  });
});

describe('odd shelves that work', () => {
  test('without a white, and with one paint', () => {
    const shelf = read(csv(TENS));
    expect(shelf.white).toBeNull();
    expect(remarkWords(shelf.remarks).join(' ')).toMatch(/no white.*one paint/);
  });
  test('a white is found by its name before a paler paint', () => {
    const flat = (value: number) => TENS.map(() => value).join(',');
    const rows = (name: string, k: number) => `${name},K,${flat(k)}\n${name},S,${flat(1)}\n`;
    const heading = `pigment,coefficient,${TENS.join(',')}\n`;
    expect(read(heading + rows('Chalk ground', 0.001) + rows('Blanc', 0.003)).white).toBe('Blanc');
    expect(read(heading + rows('Pale', 0.003) + rows('Paler', 0.001)).white).toBe('Paler');
    expect(read(heading + rows('White oak', 0.9)).white).toBeNull();
  });
});
