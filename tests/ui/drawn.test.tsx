import { act, cleanup, render as renderSoon, screen } from '@testing-library/preact';
import type { JSX } from 'preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { DrawnLadder } from '../../src/drawing/drawn-ladder.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { ClothFold } from '../../src/ui/components/drawn/ClothFold.tsx';
import { ClothLine } from '../../src/ui/components/drawn/ClothLine.tsx';
import { ColourComparison } from '../../src/ui/components/drawn/ColourComparison.tsx';
import { drawAll } from '../../src/ui/components/drawn/draw-queue.ts';
import { FoldRow } from '../../src/ui/components/drawn/FoldRow.tsx';
import { HangingCloth } from '../../src/ui/components/drawn/HangingCloth.tsx';
import { CameraIcon } from '../../src/ui/components/drawn/icons.tsx';
import { Ladder } from '../../src/ui/components/drawn/Ladder.tsx';
import { PaletteBoard } from '../../src/ui/components/drawn/PaletteBoard.tsx';
import { Pile } from '../../src/ui/components/drawn/Pile.tsx';
import { RecipeDrawing } from '../../src/ui/components/drawn/RecipeDrawing.tsx';

const ladder = (hexes: string, ...unreached: number[]): DrawnLadder =>
  hexes.split(',').map((hex, at) => ({
    step: LADDER_STEPS[at] ?? 'deepest fold',
    hex,
    share: 1 / 6,
    reachable: !unreached.includes(at),
  }));
const red = ladder('#e8a79a,#c9473a,#a82b22,#7e1f1a,#561512,#34100e');
const blue = ladder('#c3cfda,#8ea5ba,#5f7f9d,#46637f,#2f4459,#1c2836', 0, 5);
const TRICKY = '<img src=x onerror="alert(1)"> & "folds"';

afterEach(cleanup);

/** Rendered, and all that takes turns drawn. */
function render(what: JSX.Element) {
  const rendered = renderSoon(what);
  act(drawAll);
  return rendered;
}

const everything = (name: string) => (
  <>
    <HangingCloth name={name} ladder={red} trim={blue} lining={blue} seed={1} detail="small" />
    <ClothFold name={name} ladder={blue} seed={2} />
    <FoldRow label={name} seed={1} folds={[{ id: 'a', name, ladder: blue }]} />
    <ClothLine label={name} cloths={[{ name, ladder: red, share: 1 }]} width={300} />
    <Pile name={name} hex="#c8963c" parts={2} seed={1} />
    <RecipeDrawing
      piles={[{ name, hex: '#c8963c', parts: 2 }]}
      mixed={{ name, hex: '#8f9a86' }}
      width={500}
    />
    <ColourComparison wanted={{ name, hex: '#8f9a86' }} mixed={{ name, hex: '#95997f' }} />
    <PaletteBoard
      label={name}
      pigments={[{ name, hex: '#f4f2ec', amount: 1 }]}
      mixed={[]}
      width={500}
    />
    <Ladder name={name} ladder={blue} words={[name]} />
    <CameraIcon label={name} />
  </>
);

describe('every drawing', () => {
  test('is a picture with words for it', () => {
    const { container } = render(everything('blue cloak'));
    const drawings = [...container.querySelectorAll('svg')];
    expect(drawings).toHaveLength(10);
    for (const drawing of drawings) {
      expect(drawing.getAttribute('role')).toBe('img');
      const title = drawing.querySelector(`[id="${drawing.getAttribute('aria-labelledby')}"]`);
      expect(title?.textContent).toContain('blue cloak');
    }
  });

  test('has ids that occur once, and refers only to what is there', () => {
    const { container } = render(
      <>
        {everything('one')}
        {everything('two')}
      </>,
    );
    const ids = [...container.querySelectorAll('[id]')].map((element) => element.id);
    expect(ids.length).toBeGreaterThan(10);
    expect(new Set(ids).size).toBe(ids.length);
    const references = [...container.innerHTML.matchAll(/url\(#([^)]+)\)/g)];
    expect(references.length).toBeGreaterThan(10);
    for (const [, id] of references) expect(ids).toContain(id);
  });

  test('takes the words of the painter as words', () => {
    const { container } = render(everything(TRICKY));
    expect(container.querySelectorAll('img, script, [onerror]')).toHaveLength(0);
    expect(container.querySelector('title')?.textContent).toContain(TRICKY);
  });

  test('is the same for the same seed', () => {
    const first = render(<HangingCloth name="x" ladder={red} seed={9} detail="small" />).container;
    const paths = (element: Element) =>
      [...element.querySelectorAll('path')].map((path) => path.getAttribute('d')).join();
    const again = render(<HangingCloth name="x" ladder={red} seed={9} detail="small" />).container;
    const other = render(<HangingCloth name="x" ladder={red} seed={10} detail="small" />).container;
    expect(paths(first).length).toBeGreaterThan(1000);
    expect(paths(again)).toBe(paths(first));
    expect(paths(other)).not.toBe(paths(first));
  });

  test('has no figure that is not one', () => {
    const { container } = render(everything('x'));
    const paths = [...container.querySelectorAll('path')].map((path) => path.getAttribute('d')!);
    expect(paths.length).toBeGreaterThan(100);
    for (const path of paths) expect(path).toMatch(/^M-?[\d.]/);
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('cloth', () => {
  test('says what is out of reach and hatches it', () => {
    const { container } = render(
      <HangingCloth name="cloak" ladder={blue} seed={3} detail="small" />,
    );
    expect(screen.getByRole('img').textContent).toContain(
      'highlight and deepest fold out of reach',
    );
    expect(container.querySelectorAll('path[fill^="url(#"]').length).toBeGreaterThan(0);
  });

  test('is not hatched where all is in reach', () => {
    const { container } = render(
      <HangingCloth name="cloak" ladder={red} seed={3} detail="small" />,
    );
    expect(container.querySelectorAll('path[fill^="url(#"]')).toHaveLength(0);
  });

  test('is painted in all of its ladder', () => {
    const { container } = render(<HangingCloth name="cloak" ladder={red} seed={3} />);
    const fills = new Set(
      [...container.querySelectorAll('path')].map((path) => path.getAttribute('fill')),
    );
    expect(fills.size).toBeGreaterThan(15);
  });

  test('hangs from one peg or two', () => {
    const pegs = (container: Element) => container.querySelectorAll('circle').length / 4;
    const one = render(
      <HangingCloth name="x" ladder={red} seed={3} hang="one peg" detail="small" />,
    );
    const two = render(
      <HangingCloth name="x" ladder={red} seed={3} hang="two pegs" detail="small" />,
    );
    expect(pegs(one.container)).toBe(1);
    expect(pegs(two.container)).toBe(2);
  });
});

test('another colour falls in the same folds, even one whose steps are alike', () => {
  const black = ladder('#111111,#111111,#111111,#111111,#000000,#000000');
  const shown = (container: Element, what: string) =>
    [...container.querySelectorAll('g > g > path')].map((path) => path.getAttribute(what));
  const { container, rerender } = render(
    <HangingCloth name="x" ladder={red} seed={4} detail="small" />,
  );
  const shapes = shown(container, 'd');
  const colours = shown(container, 'fill');
  expect(shapes.length).toBeGreaterThan(20);
  rerender(<HangingCloth name="x" ladder={black} seed={4} detail="small" />);
  act(drawAll);
  expect(shown(container, 'd')).toEqual(shapes);
  const blacks = new Set(shown(container, 'fill'));
  expect(blacks).toContain('#111111');
  expect(blacks.size).toBeLessThan(8);
  rerender(<HangingCloth name="x" ladder={red} seed={4} detail="small" />);
  act(drawAll);
  expect(shown(container, 'fill')).toEqual(colours);
});

describe('a line of cloths', () => {
  const cloths = [
    { name: 'slate blue', ladder: blue, share: 0.6 },
    { name: 'red earth', ladder: red, share: 0.3 },
    { name: 'vermilion', ladder: red, share: 0.01, accent: true },
  ];

  test('has a button for each cloth and tells which was pressed', () => {
    const choose = vi.fn();
    render(<ClothLine label="x" cloths={cloths} chosen={1} onChoose={choose} width={600} />);
    expect(screen.getAllByRole('button')).toHaveLength(3);
    const chosen = screen.getByRole('button', { name: 'red earth' });
    expect(chosen.getAttribute('aria-pressed')).toBe('true');
    screen.getByRole('button', { name: 'vermilion' }).click();
    expect(choose).toHaveBeenCalledWith(2);
  });

  test('says the shares', () => {
    render(<ClothLine label="Evening" cloths={cloths} width={600} />);
    expect(screen.getByRole('img').textContent).toContain('slate blue 60 %');
    expect(screen.queryAllByRole('button')).toHaveLength(0);
  });
});

test('a row of folds marks the chosen one and those out of reach in words', () => {
  const choose = vi.fn();
  render(
    <FoldRow
      label="Warmth"
      seed={1}
      chosen="b"
      onChoose={choose}
      folds={[
        { id: 'a', name: 'warmer', ladder: red },
        { id: 'b', name: 'cooler', ladder: blue },
      ]}
    />,
  );
  const cooler = screen.getByRole('button', { name: /cooler.*chosen, out of reach/ });
  expect(cooler.getAttribute('aria-pressed')).toBe('true');
  screen.getByRole('button', { name: /warmer/ }).click();
  expect(choose).toHaveBeenCalledWith('a');
});

test('a recipe says its parts under each pile', () => {
  render(
    <RecipeDrawing
      width={600}
      piles={[
        { name: 'white', hex: '#ffffff', parts: 3 },
        { name: 'ochre', hex: '#c8963c', parts: 1 },
      ]}
      mixed={{ name: 'the mixture', hex: '#e0c8a0' }}
    />,
  );
  const counts = screen.getAllByText(/^\d+ parts?$/).map((words) => words.textContent);
  expect(counts).toEqual(['3 parts', '1 part']);
  expect(screen.getByRole('img').textContent).toContain('3 parts white and 1 part ochre');
});

test('every pile of a palette can be pressed', () => {
  const choose = vi.fn();
  render(
    <PaletteBoard
      label="Sky"
      width={700}
      pigments={[
        { name: 'white', hex: '#f4f2ec', amount: 4 },
        { name: 'black', hex: '#222222', amount: 1 },
      ]}
      mixed={[{ name: 'pale', hex: '#dddddd', amount: 1 }]}
      chosen={{ kind: 'mixed', index: 0 }}
      onChoose={choose}
    />,
  );
  expect(screen.getByRole('button', { name: 'pale' }).getAttribute('aria-pressed')).toBe('true');
  screen.getByRole('button', { name: 'black' }).click();
  expect(choose).toHaveBeenCalledWith('pigment', 1);
});

test('a fold out of reach as a whole is hatched as a whole', () => {
  const { container } = render(
    <FoldRow label="x" seed={1} folds={[{ id: 'a', name: 'a', ladder: red, reachable: false }]} />,
  );
  expect(container.querySelectorAll('path[fill^="url(#"]').length).toBeGreaterThan(0);
  expect(screen.getAllByText('out of reach')).toHaveLength(1);
});

test('the palette is told from the hole onward, mixtures from light to dark', () => {
  render(
    <PaletteBoard
      label="Sky"
      width={700}
      hand="right"
      shape="square"
      pigments={[
        { name: 'white', hex: '#f4f2ec', amount: 4 },
        { name: 'black', hex: '#222222', amount: 1 },
      ]}
      mixed={[
        { name: 'dark', hex: '#333333', amount: 1 },
        { name: 'pale', hex: '#dddddd', amount: 1 },
      ]}
    />,
  );
  const words = screen.getByRole('img').textContent;
  expect(words).toContain('thumb hole at the right');
  expect(words).toContain('along its edge white and black');
  expect(words).toContain('light to dark pale and dark');
});
