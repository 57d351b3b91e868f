import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

/** A labelled select whose label is beside it, not around it. */
export function SelectField<Value extends string>({
  label,
  name,
  options,
  chosen,
  onChoose,
  children,
}: {
  label: string;
  name?: string;
  options: readonly (readonly [value: Value, words: string])[];
  chosen: Value | undefined;
  onChoose?: (value: Value) => void;
  /** Help text and validation errors. */
  children?: ComponentChildren;
}) {
  const id = useId();
  return (
    <div class="shelf-field">
      <label for={id}>{label}</label>
      <select
        id={id}
        name={name}
        aria-describedby={children ? `${id}-help` : undefined}
        onChange={(event) => onChoose?.(event.currentTarget.value as Value)}
      >
        {options.map(([value, words]) => (
          <option key={value} value={value} selected={value === chosen}>
            {words}
          </option>
        ))}
      </select>
      {children && (
        <div class="small" id={`${id}-help`}>
          {children}
        </div>
      )}
    </div>
  );
}

/** The entries of a table of words as options, in the table's order. */
export const optionsOf = <Value extends string>(words: Readonly<Record<Value, string>>) =>
  Object.entries(words) as [Value, string][];
