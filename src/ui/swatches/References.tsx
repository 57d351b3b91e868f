import type { Signal } from '@preact/signals';
import { readNumber } from '../../pigment/number.ts';
import { typed } from '../locale.ts';
import { saySwatches } from '../words/swatches.ts';
import { greyIs, whiteIs } from './reading.ts';

/**
 * Inputs for the lightness of the white and grey references in the photograph, where the painter
 * knows it.
 */
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
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={typed(of.value)}
        onChange={({ currentTarget }) => {
          const read = readNumber(currentTarget.value);
          if (read !== null && read > 0 && read <= 100) of.value = read;
          currentTarget.value = typed(of.value);
        }}
      />
    </label>
  );
}
