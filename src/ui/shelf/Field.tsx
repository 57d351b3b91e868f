import { type StockFault, type StockField, stockFaultWords } from '../../pigment/validate.ts';

/** What is wrong with one field, in words; nothing where it is sound. */
export function Faulty({ faults, field }: { faults: readonly StockFault[]; field: StockField }) {
  const mine = faults.filter((fault) => fault.field === field);
  if (mine.length === 0) return null;
  return (
    <p class="shelf-fault" role="alert" id={`shelf-fault-${field ?? 'all'}`}>
      {mine.map(stockFaultWords).join(' ')}
    </p>
  );
}

/** A line of text with its label, its help and what is wrong with it. */
export function Field({
  name,
  label,
  help,
  start,
  inputMode = 'text',
  faults,
}: {
  name: Exclude<StockField, null>;
  label: string;
  help?: string;
  start: string;
  inputMode?: 'text' | 'decimal';
  faults: readonly StockFault[];
}) {
  const id = `shelf-${name}`;
  const isWrong = faults.some((fault) => fault.field === name);
  const described = [help && `${id}-help`, isWrong && `shelf-fault-${name}`].filter(Boolean);
  return (
    <div class="shelf-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        name={name}
        type="text"
        inputMode={inputMode}
        autocomplete="off"
        defaultValue={start}
        aria-invalid={isWrong}
        aria-describedby={described.length > 0 ? described.join(' ') : undefined}
      />
      {help && (
        <p class="small" id={`${id}-help`}>
          {help}
        </p>
      )}
      <Faulty faults={faults} field={name} />
    </div>
  );
}
