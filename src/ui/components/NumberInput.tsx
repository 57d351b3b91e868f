import { useEffect, useRef } from 'preact/hooks';
import { readNumber } from '../../pigment/import/parse-number.ts';
import { formatForField } from '../state/locale-format.ts';

/**
 * A number field that accepts a decimal comma as well as a point; the browser's own number field
 * refuses one of them in some locales. Its text is not overwritten while it has the focus.
 */
export function NumberInput({
  label,
  value,
  onNumber,
  decimals = 3,
  signed = false,
  late = false,
}: {
  label: string;
  /** Null for an empty field. */
  value: number | null;
  /** Called with null for an empty field; not called for invalid input. */
  onNumber: (value: number | null) => void;
  decimals?: number;
  /** Negative numbers are allowed. */
  signed?: boolean;
  /** Report the value on change (when the field is left), not on every input. */
  late?: boolean;
}) {
  const input = useRef<HTMLInputElement>(null);
  const shown = value === null ? '' : formatForField(value, decimals);
  useEffect(() => {
    if (input.current && input.current !== document.activeElement) input.current.value = shown;
  }, [shown]);
  const hear = ({ currentTarget }: { currentTarget: HTMLInputElement }) => {
    const text = currentTarget.value.trim().replace('−', '-');
    const read = readNumber(text);
    if (text === '') onNumber(null);
    else if (read !== null && (signed || read >= 0)) onNumber(read);
  };
  return (
    <label class="mix-field">
      {label}
      <input
        ref={input}
        type="text"
        // The decimal keyboard of phones has no minus.
        inputMode={signed ? 'text' : 'decimal'}
        autocomplete="off"
        defaultValue={shown}
        onInput={late ? undefined : hear}
        onChange={late ? hear : undefined}
        onBlur={() => {
          if (input.current) input.current.value = shown;
        }}
      />
    </label>
  );
}
