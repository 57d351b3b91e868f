import type { Signal } from '@preact/signals';
import { saySwatches } from '../words/swatches.ts';
import { greyIs, whiteIs } from './reading.ts';

/** How light the white and the grey in the picture are, where the painter knows it. */
export const References = () => (
  <details class="swatch-known">
    <summary>{saySwatches.known}</summary>
    <p>{saySwatches.knownAbout}</p>
    <div class="swatch-choices">
      <Lightness label={saySwatches.whiteIs} of={whiteIs} />
      <Lightness label={saySwatches.greyIs} of={greyIs} />
    </div>
  </details>
);

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
