import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { chartLabs, takeChart } from './card-reading.ts';

/**
 * Use of a 24-patch colour chart in the photograph: its reference values, and marking its corners.
 */
export const ColourChartFields = ({
  onTouch,
  canTouch,
}: {
  onTouch: () => void;
  canTouch: boolean;
}) => (
  <details class="swatch-known">
    <summary>{calibrationTexts.chart}</summary>
    <p>{calibrationTexts.chartAbout}</p>
    <label>
      {calibrationTexts.chartFile}
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
        {calibrationTexts.chartTouch}
      </button>
    </p>
  </details>
);
