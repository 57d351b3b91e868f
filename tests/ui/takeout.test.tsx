import { expect, test } from 'vitest';
import { nextVersionMetadata } from '../../src/book/merge/next-version.ts';
import { START } from '../../src/book/schema/hybrid-clock.ts';
import { type Entry, KINDS, type Kind } from '../../src/book/schema/record.ts';
import { svgOf } from '../../src/ui/features/book/download-entry.tsx';
import { pigmentWords } from '../../src/ui/features/book/entry-names.ts';
import { entryItems } from '../../src/ui/features/book/entry-text.ts';
import { differencesOf } from '../../src/ui/features/book/version-differences.ts';
import { bodies } from '../book/kinds.ts';
import { mixtureOf } from '../book/made.ts';

const marks = nextVersionMetadata('device-0001', START, Date.UTC(2031, 4, 17, 12), []);
const EVIL = '</svg><script>alert(1)</script> & "x"';
const entryOf = (kind: Kind, change: object = {}) =>
  ({
    id: 'entry-0001',
    kind,
    created: marks.changed,
    ...marks,
    body: { ...bodies[kind], ...change },
  }) as unknown as Entry;
const plain = (pigment: string) => pigment;

test.each(KINDS)(
  'a %s is drawn as a card: whole, with its name escaped, its colours and words',
  (kind) => {
    const entry = entryOf(kind, { name: EVIL });
    const svg = svgOf(entry);
    expect(svg).toMatch(
      /^<\?xml version="1.0" encoding="UTF-8"\?>\n<svg[^>]+xmlns="http:\/\/www.w3.org\/2000\/svg"/,
    );
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script&gt;');
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).toBeNull();
    const [section] = entryItems(entry, pigmentWords);
    expect(section!.lines.length).toBeGreaterThan(0);
    // Long names are broken into lines; their first word is there all the same.
    const text = parsed.documentElement.textContent;
    for (const { name } of section!.lines.slice(0, 3)) {
      expect(name).not.toBe('');
      expect(text).toContain(name.split(' ')[0]);
    }
  },
);

test('the card of a harmony has its cloths, painted', () => {
  const svg = svgOf(entryOf('harmony'));
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const hung = [...parsed.querySelectorAll('[data-hung]')];
  expect(hung).toHaveLength(bodies.harmony.colours.length);
  for (const cloth of hung) expect(cloth.querySelectorAll('path').length).toBeGreaterThan(10);
});

test.each(KINDS)('two versions of a %s differ in nothing but what was changed', (kind) => {
  expect(differencesOf(entryOf(kind), entryOf(kind), plain)).toEqual([]);
  expect(differencesOf(entryOf(kind), entryOf(kind, { name: 'Another' }), plain)).toEqual([
    {
      what: 'Name',
      sides: [
        { words: bodies[kind].name, lab: null },
        { words: 'Another', lab: null },
      ],
      deltaE00: null,
    },
  ]);
});

test('a colour that was altered, one that was mixed otherwise and one that is gone', () => {
  const [first, ...others] = bodies.harmony.colours;
  const warmer = { ...first!, lab: [first!.lab[0], first!.lab[1] + 6, first!.lab[2]] as const };
  const mixed = { ...others[0]!, mixture: mixtureOf(others[0]!.lab, 'red-earth') };
  const found = differencesOf(
    entryOf('harmony'),
    entryOf('harmony', { colours: [warmer, mixed, ...others.slice(1)] }),
    plain,
  );
  expect(found.map(({ what }) => what)).toEqual([first!.name, others[0]!.name]);
  expect(found[0]!.deltaE00).toBeGreaterThan(1);
  expect(found[0]!.sides.map(({ lab }) => lab)).toEqual([first!.lab, warmer.lab]);
  expect(found[1]!.deltaE00).toBeNull();
  expect(found[1]!.sides[1].words).toContain('red-earth');

  const [gone] = differencesOf(entryOf('harmony'), entryOf('harmony', { colours: others }), plain);
  expect(gone!.what).toBe(first!.name);
  expect(gone!.sides[1]).toEqual({ words: '', lab: null });
});
