import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { readNumber } from '../../pigment/number.ts';
import { typed } from '../locale.ts';
import { sayPalette } from './words.ts';

/** A field as it stands in the book; what is typed is kept when the field is left. */
export function NumberField({
  label,
  value,
  onKeep,
  help,
  zero = false,
  whole = false,
  empty = false,
  read = readNumber,
}: {
  label: string;
  value: number | undefined;
  onKeep: (value: number | undefined) => void;
  help?: string | undefined;
  /** 0 may stand there too. */
  zero?: boolean;
  /** A whole number from 1 to 20. */
  whole?: boolean;
  /** It may be left empty. */
  empty?: boolean;
  /** How its text is read. */
  read?: (text: string) => number | null;
}) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState('');
  const shown = value === undefined ? '' : typed(value);
  // What comes from elsewhere (undo, another window) is shown; what is being typed stays.
  useEffect(() => {
    if (input.current && input.current !== document.activeElement) input.current.value = shown;
  }, [shown]);
  const keep = (text: string) => {
    if (text.trim() === '' && empty) {
      setFault('');
      return onKeep(undefined);
    }
    const number = read(text) ?? Number.NaN;
    const sound = whole
      ? Number.isInteger(number) && number >= 1 && number <= 20
      : Number.isFinite(number) && (zero ? number >= 0 : number > 0);
    setFault(
      sound ? '' : whole ? sayPalette.aWhole : zero ? sayPalette.aNumberOr0 : sayPalette.aNumber,
    );
    if (sound) onKeep(number);
  };
  return (
    <div class="pal-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        ref={input}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        defaultValue={shown}
        aria-invalid={fault !== ''}
        aria-describedby={fault !== '' || help ? `${id}-help` : undefined}
        onChange={(event) => keep(event.currentTarget.value)}
      />
      {(fault !== '' || help) && (
        <p
          class={fault === '' ? 'small' : 'pal-fault'}
          id={`${id}-help`}
          role={fault === '' ? undefined : 'alert'}
        >
          {fault === '' ? help : fault}
        </p>
      )}
    </div>
  );
}

export function TextField({
  label,
  value,
  onKeep,
  needed = false,
  help,
}: {
  label: string;
  value: string;
  onKeep: (value: string) => void;
  needed?: boolean;
  help?: string;
}) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [fault, setFault] = useState('');
  useEffect(() => {
    if (input.current && input.current !== document.activeElement) input.current.value = value;
  }, [value]);
  const keep = (text: string) => {
    const typed = text.trim();
    if (needed && typed === '') return setFault(sayPalette.aName);
    setFault('');
    onKeep(typed);
  };
  return (
    <div class="pal-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        ref={input}
        type="text"
        autocomplete="off"
        maxLength={120}
        defaultValue={value}
        aria-invalid={fault !== ''}
        aria-describedby={fault !== '' || help ? `${id}-help` : undefined}
        onChange={(event) => keep(event.currentTarget.value)}
      />
      {(fault !== '' || help) && (
        <p
          class={fault === '' ? 'small' : 'pal-fault'}
          id={`${id}-help`}
          role={fault === '' ? undefined : 'alert'}
        >
          {fault === '' ? help : fault}
        </p>
      )}
    </div>
  );
}

export function Select<Value extends string>({
  label,
  value,
  options,
  onKeep,
}: {
  label: string;
  value: Value;
  options: readonly (readonly [Value, string])[];
  onKeep: (value: Value) => void;
}) {
  const id = useId();
  return (
    <div class="pal-field">
      <label for={id}>{label}</label>
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
    </div>
  );
}
