import type { Signal } from '@preact/signals';
import { PIGMENTS, type PigmentFamily } from '../../../pigment/pigment-facts.ts';
import type { OwnPigment } from '../../../pigment/stock.ts';
import type { StockFault } from '../../../pigment/validate-stock.ts';
import { FAMILY_WORDS, shelfTexts } from '../../texts/shelf-texts.ts';
import { Faulty } from './PaintField.tsx';
import { NEW_OWN } from './paint-form-values.ts';

const FAMILIES = Object.keys(FAMILY_WORDS) as PigmentFamily[];

/**
 * A select of all known pigments by family: the studio's custom pigments first, "a new one" last.
 */
export function PigmentSelect({
  pigment,
  own,
  faults,
  chosen,
}: {
  pigment: Signal<string>;
  own: readonly OwnPigment[];
  /** Called with the custom pigment that was chosen, or null for any other. */
  chosen: (own: OwnPigment | null) => void;
  faults: readonly StockFault[];
}) {
  const isWrong = faults.some(({ field }) => field === 'pigment');
  return (
    <div class="shelf-field">
      <label for="shelf-pigment">{shelfTexts.pigment}</label>
      <select
        id="shelf-pigment"
        name="pigment"
        value={pigment}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? 'shelf-fault-pigment' : undefined}
        onChange={(event) => {
          const id = event.currentTarget.value;
          pigment.value = id;
          chosen(own.find((each) => each.id === id) ?? null);
        }}
      >
        <option value="">{shelfTexts.choose}</option>
        {own.length > 0 && (
          <optgroup label={shelfTexts.yours}>
            {own.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </optgroup>
        )}
        {FAMILIES.map((family) => (
          <optgroup key={family} label={FAMILY_WORDS[family]}>
            {PIGMENTS.filter((facts) => facts.family === family).map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </optgroup>
        ))}
        <option value={NEW_OWN}>{shelfTexts.oneOfMyOwn}</option>
      </select>
      <Faulty faults={faults} field="pigment" />
    </div>
  );
}
