/** A labelled group of radio buttons. */
export function RadioGroup<T extends string>({
  legend,
  name,
  choices,
  value,
  onChoose,
}: {
  legend: string;
  name: string;
  choices: readonly (readonly [value: T, text: string])[];
  value: T;
  onChoose: (value: T) => void;
}) {
  return (
    <fieldset class="choices">
      <legend>{legend}</legend>
      {choices.map(([one, text]) => (
        <label key={one} class="check">
          <input type="radio" name={name} checked={value === one} onChange={() => onChoose(one)} />
          {text}
        </label>
      ))}
    </fieldset>
  );
}
