import { saySwatches } from '../words/swatches.ts';
import { chartLabs, takeChart } from './reading.ts';

/**
 * Use of a 24-patch colour chart in the photograph: its reference values, and marking its corners.
 */
export const ChartIn = ({ onTouch, canTouch }: { onTouch: () => void; canTouch: boolean }) => (
  <details class="swatch-known">
    <summary>{saySwatches.chart}</summary>
    <p>{saySwatches.chartAbout}</p>
    <label>
      {saySwatches.chartFile}
      <input
        type="file"
        accept=".txt,.cgats,.cgt,.ti3,text/plain"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) void takeChart(file);
        }}
      />
    </label>
    <p class="swatch-actions">
      <button type="button" disabled={!canTouch || chartLabs.value === null} onClick={onTouch}>
        {saySwatches.chartTouch}
      </button>
    </p>
  </details>
);
