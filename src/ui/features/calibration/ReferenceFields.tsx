import type { Signal } from '@preact/signals';
import { readNumber } from '../../../pigment/import/parse-number.ts';
import { formatForField } from '../../state/locale-format.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { greyIs, whiteIs } from './card-reading.ts';

/**
 * Inputs for the lightness of the white and grey references in the photograph, where the painter
 * knows it.
 */
export const ReferenceFields = () => (
  <details class="swatch-known">
    <summary>{calibrationTexts.known}</summary>
    <p>{calibrationTexts.knownAbout}</p>
    <div class="swatch-choices">
      <Lightness label={calibrationTexts.whiteIs} of={whiteIs} />
      <Lightness label={calibrationTexts.greyIs} of={greyIs} />
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
        value={formatForField(of.value)}
        onChange={({ currentTarget }) => {
          const read = readNumber(currentTarget.value);
          if (read !== null && read > 0 && read <= 100) of.value = read;
          currentTarget.value = formatForField(of.value);
        }}
      />
    </label>
  );
}
