import type { Part } from '../../../calibration/painted-swatch.ts';
import { readNumber } from '../../../pigment/import/parse-number.ts';
import { labelOf } from '../../../pigment/stock-label.ts';
import { formatForField } from '../../state/locale-format.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';

/**
 * Input for the composition of a sample or pile: one paint and its parts per line. Clearing the
 * paint of a line removes the line.
 */
export function CompositionFields({
  of,
  parts,
  onChange,
}: {
  /** Names the sample in the accessible labels of the fields. */
  of: string;
  /** By ids of entries on the shelf. A field without a valid number gives NaN. */
  parts: readonly Part[];
  onChange: (parts: readonly Part[]) => void;
}) {
  const stock = ownStock.value;
  const entries = stock.entries.filter(
    ({ id, amount }) => amount !== 0 || parts.some(({ pigment }) => pigment === id),
  );
  const lines: readonly (Part | null)[] = [...parts, null];
  const set = (at: number, part: Part | null) =>
    onChange(
      part === null
        ? parts.filter((_, i) => i !== at)
        : at === parts.length
          ? [...parts, part]
          : parts.map((each, i) => (i === at ? part : each)),
    );
  return (
    <div class="swatch-parts">
      {lines.map((part, at) => (
        <div class="swatch-part" key={at}>
          <select
            aria-label={calibrationTexts.paintOf(of, at + 1)}
            value={part?.pigment ?? ''}
            onChange={({ currentTarget: { value } }) =>
              set(at, value === '' ? null : { pigment: value, parts: part?.parts ?? 1 })
            }
          >
            <option value="">
              {part
                ? calibrationTexts.remove
                : at === 0
                  ? calibrationTexts.onePaint
                  : calibrationTexts.another}
            </option>
            {entries.map((entry) => (
              <option key={entry.id} value={entry.id}>
                {labelOf(stock, entry)}
              </option>
            ))}
          </select>
          {part && parts.length > 1 && (
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              aria-label={calibrationTexts.partsIn(of, at + 1)}
              value={Number.isFinite(part.parts) ? formatForField(part.parts) : ''}
              onChange={({ currentTarget: { value } }) =>
                set(at, { ...part, parts: readNumber(value) ?? Number.NaN })
              }
            />
          )}
        </div>
      ))}
    </div>
  );
}
