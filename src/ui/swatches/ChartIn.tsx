import { saySwatches } from '../words/swatches.ts';
import { chartLabs, takeChart } from './reading.ts';

/** A chart of 24 patches in the picture: its values, and the way to touch its corners. */
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
