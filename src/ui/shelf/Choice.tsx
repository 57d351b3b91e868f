import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

/** A list to choose one thing from, with its label beside it and not around it. */
export function Choice<Value extends string>({
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
  /** Help, and what is wrong. */
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

/** The words of a table as options, in its order. */
export const optionsOf = <Value extends string>(words: Readonly<Record<Value, string>>) =>
  Object.entries(words) as [Value, string][];
