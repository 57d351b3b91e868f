import { signal } from '@preact/signals';
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Point } from '../../src/calibration/homography.ts';
import type { Part } from '../../src/calibration/painted-swatch.ts';
import { AccuracyChart } from '../../src/ui/features/calibration/AccuracyChart.tsx';
import { CompositionFields } from '../../src/ui/features/calibration/CompositionFields.tsx';
import { Crosshair } from '../../src/ui/features/calibration/Crosshair.tsx';
import { PointMarker } from '../../src/ui/features/calibration/PointMarker.tsx';

afterEach(cleanup);

// The shelf without the book that it is kept in.
vi.mock('../../src/ui/features/shelf/stock-state.ts', async () => {
  const { starterStock } = await import('../../src/pigment/starter-shelf.ts');
  return { ownStock: signal(starterStock()) };
});

describe('a photograph under a cross', () => {
  test('the arrow keys move it, with Shift finely, never off the picture; Enter sets it', () => {
    const at = signal<Point>([0.5, 0.5]);
    const set = vi.fn();
    render(<Crosshair url="x" alt="a card" at={at} onSet={set} />);
    const surface = screen.getByRole('application');
    const press = (key: string, shiftKey = false) => fireEvent.keyDown(surface, { key, shiftKey });
    press('ArrowLeft');
    expect(at.value[0]).toBeLessThan(0.49);
    const [x] = at.value;
    press('ArrowRight', true);
    expect(at.value[0] - x).toBeGreaterThan(0);
    expect(at.value[0] - x).toBeLessThan(0.005);
    for (let i = 0; i < 80; i++) press('ArrowUp');
    expect(at.value[1]).toBe(0);
    for (let i = 0; i < 80; i++) press('ArrowDown');
    expect(at.value[1]).toBeLessThan(1);
    press('a');
    expect(set).not.toHaveBeenCalled();
    press('Enter');
    expect(set).toHaveBeenCalledWith(at.value);
    const words = screen.getByText(/% from the left/).textContent;
    expect(words).toMatch(/\d+ % from the left, \d+ % from the top/);
  });

  test('things are touched in turn; one may be missing, and a step can be taken back', () => {
    const done = vi.fn();
    const turns = [
      { words: 'Touch the white.', mark: '1' },
      { words: 'Touch the pile.', mark: '2', mayMiss: true },
      { words: 'Touch the grey.', mark: '3' },
    ];
    render(<PointMarker url="x" alt="piles" turns={turns} onDone={done} />);
    const enter = () => fireEvent.keyDown(screen.getByRole('application'), { key: 'Enter' });
    expect(screen.queryByText('It is not in the picture')).toBeNull();
    enter();
    screen.getByText('Touch the pile.');
    fireEvent.click(screen.getByText('One step back'));
    screen.getByText('Touch the white.');
    enter();
    fireEvent.click(screen.getByText('It is not in the picture'));
    screen.getByText('Touch the grey.');
    expect(done).not.toHaveBeenCalled();
    enter();
    enter();
    expect(done).toHaveBeenCalledTimes(1);
    expect(done.mock.calls[0]![0]).toEqual([[0.5, 0.5], null, [0.5, 0.5]]);
  });
});

describe('how well piles were foreseen', () => {
  test('is drawn pile by pile within the chart, and told in words', () => {
    const piles = [0.4, 2, 12].map((deltaE00, i) => ({ id: `${i}`, date: '2031-05-17', deltaE00 }));
    const { container } = render(<AccuracyChart piles={piles} />);
    screen.getByRole('img', { name: /3 piles .*: the difference is plain/ });
    const heights = [...container.querySelectorAll('circle')].map((dot) =>
      Number(dot.getAttribute('cy')),
    );
    expect(heights).toHaveLength(3);
    expect(heights).toEqual(heights.toSorted((p, q) => q - p));
    for (const y of heights) expect(y > 0 && y < 120).toBe(true);
  });
});

describe('what something was mixed from', () => {
  test('a line for each paint, and one for another; a paint taken away takes its line', () => {
    const change = vi.fn();
    const parts: Part[] = [
      { pigment: 'smalt', parts: 2 },
      { pigment: 'ultramarine', parts: 3 },
    ];
    render(<CompositionFields of="pile" parts={parts} onChange={change} />);
    const selects = screen.getAllByRole('combobox');
    expect(selects).toHaveLength(3);
    expect(screen.getAllByRole('option', { name: 'Ultramarine' })).toHaveLength(3);
    fireEvent.change(screen.getByLabelText('Parts of paint 2 in “pile”'), {
      // As it is written in many languages.
      target: { value: '1,5' },
    });
    expect(change).toHaveBeenLastCalledWith([parts[0], { pigment: 'ultramarine', parts: 1.5 }]);
    fireEvent.change(selects[0]!, { target: { value: '' } });
    expect(change).toHaveBeenLastCalledWith([parts[1]]);
  });
});
