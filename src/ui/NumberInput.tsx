import { useEffect, useRef } from 'preact/hooks';
import { readNumber } from '../pigment/number.ts';
import { typed } from './locale.ts';

/**
 * A number that takes a decimal comma as well as a point, which the browser's own number field refuses in
 * some languages. While it is being typed in, nothing else writes into it.
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
  /** null leaves it empty. */
  value: number | null;
  /** Gets null for an empty field; what is no number is passed over. */
  onNumber: (value: number | null) => void;
  decimals?: number;
  /** It may be below 0. */
  signed?: boolean;
  /** Heard only when the field is left. */
  late?: boolean;
}) {
  const input = useRef<HTMLInputElement>(null);
  const shown = value === null ? '' : typed(value, decimals);
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
        // A telephone's keys for decimals have no minus.
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
