import { expect, test } from 'vitest';
import { readCard } from '../../src/calibration/read-card.ts';
import { planCards } from '../../src/calibration/swatch-card.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { labOf } from '../../src/colour/lab.ts';
import { calibrationFaultWords } from '../../src/messages/calibration-messages.ts';
import { plainNumber } from '../../src/number-format.ts';
import { describeShared } from '../shared.ts';
import { chartCamera } from '../tools/card-camera.ts';
import { type Chart, flat, photograph } from '../tools/card-photo.ts';
import { chartPatches } from '../tools/chart-patches.ts';

// The patches of the classic chart: D. Pascale, mean of 30 charts, 2012 (reference data).
describeShared('a chart of 24 patches', () => {
  const spectra = chartPatches();
  const labs = spectra.map((R) => labOf(R));
  const say = (what: string, of: readonly number[]) =>
    console.log(`${what}: ${of.map((v) => v.toFixed(2)).join(', ')}`);

  test('photographed beside the card it makes strong colours come out', async () => {
    const paint = (pigment: string) => ({ pigment, label: pigment, density: null, caution: '' });
    // Patches of the chart painted into a card: their colours are known.
    const some = [0, 2, 6, 8, 12, 13, 14, 15, 16, 17];
    const [card] = planCards(
      paint('18'),
      some.map((i) => paint(String(i))),
      { tints: [] },
    );
    const painted = ({ parts }: { parts: readonly { pigment: string }[] }) =>
      parts[0]!.pigment === '18' ? flat(0.88) : spectra[Number(parts[0]!.pigment)]!;
    const chart: Chart = { R: spectra, x: 45, y: 150, step: 20 };
    const { pixels, at } = await photograph(
      card!,
      painted,
      { camera: chartCamera(spectra), tilt: 6, uneven: 0.08, size: 1100, jpeg: 92 },
      chart,
    );
    const corners = [
      [chart.x, chart.y],
      [chart.x + 5 * chart.step, chart.y],
      [chart.x + 5 * chart.step, chart.y + 3 * chart.step],
      [chart.x, chart.y + 3 * chart.step],
    ].map(([x, y]) => at(x!, y!));
    const off = (options: Parameters<typeof readCard>[2]) => {
      const reading = readCard(pixels, card!, options);
      if (!reading.ok) throw new Error(calibrationFaultWords(reading.fault, plainNumber));
      const all = reading.value.places.map(({ place, lab }) =>
        deltaE00(lab, labOf(painted(place))),
      );
      return { mean: all.reduce((sum, v) => sum + v, 0) / all.length, chart: reading.value.chart };
    };
    const without = off({});
    const right = off({ chart: { labs, corners } });
    // Touched from another corner, and the other way round.
    const turned = off({ chart: { labs, corners: [2, 1, 0, 3].map((i) => corners[i]!) } });
    say('mean without and with the chart', [without.mean, right.mean]);
    expect(right.chart!.mean).toBeLessThan(2);
    expect(right.mean).toBeLessThan(2);
    expect(right.mean).toBeLessThan(without.mean);
    expect(turned.mean).toBeCloseTo(right.mean, 1);
    const lost = readCard(pixels, card!, {
      chart: { labs, corners: [corners[0]!, corners[0]!, corners[0]!, corners[0]!] },
    });
    expect(lost.ok ? '' : lost.fault.code).toBe('chart-place');
    const other = readCard(pixels, card!, {
      chart: { labs: labs.map(() => [50, 60, -40]), corners },
    });
    expect(other.ok ? '' : other.fault.code).toBe('chart-poor');
  });
});
