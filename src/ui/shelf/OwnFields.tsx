import type { Signal } from '@preact/signals';
import type { Family, HazardLevel } from '../../pigment/facts.ts';
import type { KeptCurve, OwnPigment } from '../../pigment/stock.ts';
import type { StockFault } from '../../pigment/validate.ts';
import { masstone } from '../../pigment/white.ts';
import { CurveField, paintOfKept } from './CurveField.tsx';
import { Field } from './Field.tsx';
import { shownStock } from './state.ts';
import { FAMILY_WORDS, HAZARD_WORDS, sayShelf } from './words.ts';

/** What only the painter can say of a pigment that is on no list. */
export function OwnFields({
  own,
  curve,
  faults,
}: {
  own: OwnPigment | null;
  curve: Signal<KeptCurve | null>;
  faults: readonly StockFault[];
}) {
  return (
    <fieldset class="shelf-fields shelf-own">
      <legend>{sayShelf.ownHeading}</legend>
      <Field name="name" label={sayShelf.name} start={own?.name ?? ''} faults={faults} />
      <div class="shelf-row">
        <label>
          {sayShelf.family}
          <select name="family">
            {(Object.keys(FAMILY_WORDS) as Family[]).map((family) => (
              <option key={family} value={family} selected={family === (own?.family ?? 'brown')}>
                {FAMILY_WORDS[family]}
              </option>
            ))}
          </select>
        </label>
        <label>
          {sayShelf.hazardOf}
          <select name="hazard" aria-describedby="shelf-hazard-help">
            {(Object.keys(HAZARD_WORDS) as HazardLevel[]).map((level) => (
              <option key={level} value={level} selected={level === (own?.hazard ?? 'caution')}>
                {HAZARD_WORDS[level]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p class="small" id="shelf-hazard-help">
        {sayShelf.hazardHelp}
      </p>
      <label>
        {sayShelf.caution}
        <textarea name="caution" rows={2} maxLength={2000} defaultValue={own?.caution ?? ''} />
      </label>
      <CurveField
        name="own"
        legend={sayShelf.colour}
        curve={curve}
        start={own?.curve ? masstone(paintOfKept(own.curve), shownStock.value.surface) : null}
        none={sayShelf.fromNothing}
      />
    </fieldset>
  );
}
