import type { Signal } from '@preact/signals';
import { chartLabs, greyIs, takeChart, whiteIs } from './reading.ts';
import { saySwatches } from './words.ts';

/** What is known of the references and of a chart in the picture. */
export function Known({ onChart, canTouch }: { onChart: () => void; canTouch: boolean }) {
  return (
    <div class="swatch-known">
      <details>
        <summary>{saySwatches.known}</summary>
        <p>{saySwatches.knownAbout}</p>
        <div class="swatch-choices">
          <Lightness label={saySwatches.whiteIs} of={whiteIs} />
          <Lightness label={saySwatches.greyIs} of={greyIs} />
        </div>
      </details>
      <details>
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
          <button type="button" disabled={!canTouch || chartLabs.value === null} onClick={onChart}>
            {saySwatches.chartTouch}
          </button>
        </p>
      </details>
    </div>
  );
}

function Lightness({ label, of }: { label: string; of: Signal<number> }) {
  return (
    <label class="swatch-number">
      {label}
      <input
        type="number"
        inputMode="decimal"
        min={5}
        max={100}
        step="any"
        value={of.value}
        onChange={({ currentTarget: { valueAsNumber: value } }) => {
          if (value > 0 && value <= 100) of.value = value;
        }}
      />
    </label>
  );
}
