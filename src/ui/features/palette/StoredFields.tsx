import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { readNumber } from '../../../pigment/import/parse-number.ts';
import { described, LabelledControl } from '../../components/LabelledControl.tsx';
import { formatForField } from '../../state/locale-format.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

/** The value of a typed text, or the sentence that says what is wrong with it. */
type ParseResult<T> = { readonly value: T } | { readonly fault: string };

interface StoredFieldProps<T> {
  readonly label: string;
  readonly help?: string | undefined;
  readonly onKeep: (value: T) => void;
}

/**
 * A text field bound to a stored value. It saves on change, or shows a validation error and saves
 * nothing.
 */
function StoredField<T>({
  label,
  help,
  shown,
  decimal = false,
  read,
  onKeep,
}: StoredFieldProps<T> & {
  shown: string;
  decimal?: boolean;
  read: (text: string) => ParseResult<T>;
}) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState('');
  // Show changes from elsewhere (undo, another window), but never overwrite what is being typed.
  useEffect(() => {
    if (input.current && input.current !== document.activeElement) input.current.value = shown;
  }, [shown]);
  const keep = (text: string) => {
    const found = read(text.trim());
    setFault('fault' in found ? found.fault : '');
    if ('value' in found) onKeep(found.value);
  };
  return (
    <LabelledControl id={id} label={label} help={help} fault={fault}>
      <input
        id={id}
        ref={input}
        type="text"
        inputMode={decimal ? 'decimal' : 'text'}
        autocomplete="off"
        maxLength={120}
        defaultValue={shown}
        aria-invalid={fault !== ''}
        aria-describedby={described(id, help, fault)}
        onChange={(event) => keep(event.currentTarget.value)}
      />
    </LabelledControl>
  );
}

/** Parses a typed number; NaN for anything else. @param readAs null for no number */
export const parseNumberField = (text: string, readAs = readNumber): number =>
  readAs(text) ?? Number.NaN;

/** Range that a number field accepts; `whole` is an integer 1 to 20. */
type NumberRange = 'above 0' | '0 or more' | 'whole';
const NUMBER_RANGES: Readonly<
  Record<NumberRange, { isSound: (n: number) => boolean; fault: string }>
> = {
  'above 0': { isSound: (n) => n > 0, fault: paletteTexts.aNumber },
  '0 or more': { isSound: (n) => n >= 0, fault: paletteTexts.aNumberOr0 },
  whole: {
    isSound: (n) => Number.isInteger(n) && n >= 1 && n <= 20,
    fault: paletteTexts.aWhole,
  },
};

/** A required number. @param most upper limit, inclusive */
export function NumberField({
  value,
  sort = 'above 0',
  most = Number.POSITIVE_INFINITY,
  ...line
}: StoredFieldProps<number> & { value: number | undefined; sort?: NumberRange; most?: number }) {
  const { isSound, fault } = NUMBER_RANGES[sort];
  return (
    <StoredField
      {...line}
      decimal
      shown={shownNumber(value)}
      read={(text) => {
        const number = parseNumberField(text);
        if (!(Number.isFinite(number) && isSound(number))) return { fault };
        return number > most ? { fault: paletteTexts.atMost(most) } : { value: number };
      }}
    />
  );
}

/** An optional number above 0; an empty field saves undefined. */
export function OptionalField({
  value,
  readAs = readNumber,
  ...line
}: StoredFieldProps<number | undefined> & {
  value: number | undefined;
  /** Parses the text; null for no number. */
  readAs?: (text: string) => number | null;
}) {
  const { isSound, fault } = NUMBER_RANGES['above 0'];
  return (
    <StoredField
      {...line}
      decimal
      shown={shownNumber(value)}
      read={(text) => {
        const number = parseNumberField(text, readAs);
        if (text === '') return { value: undefined };
        return Number.isFinite(number) && isSound(number) ? { value: number } : { fault };
      }}
    />
  );
}

const shownNumber = (value: number | undefined) =>
  value === undefined ? '' : formatForField(value);

/** A line of text. @param needed reject an empty text */
export function TextField({
  value,
  needed = false,
  ...line
}: StoredFieldProps<string> & { value: string; needed?: boolean }) {
  return (
    <StoredField
      {...line}
      shown={value}
      read={(text) => (needed && text === '' ? { fault: paletteTexts.aName } : { value: text })}
    />
  );
}

export function StoredSelect<Value extends string>({
  label,
  value,
  options,
  onKeep,
}: StoredFieldProps<Value> & { value: Value; options: readonly (readonly [Value, string])[] }) {
  const id = useId();
  return (
    <LabelledControl id={id} label={label}>
      <select
        id={id}
        value={value}
        onChange={(event) => onKeep(event.currentTarget.value as Value)}
      >
        {options.map(([one, words]) => (
          <option key={one} value={one} selected={one === value}>
            {words}
          </option>
        ))}
      </select>
    </LabelledControl>
  );
}
