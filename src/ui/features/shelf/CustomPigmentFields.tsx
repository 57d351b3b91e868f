import type { Signal } from '@preact/signals';
import { masstone } from '../../../pigment/masstone.ts';
import type { OwnPigment, StoredCurve } from '../../../pigment/stock.ts';
import type { StockFault } from '../../../pigment/validate-stock.ts';
import { optionsOf, SelectField } from '../../components/SelectField.tsx';
import { FAMILY_WORDS, HAZARD_WORDS, shelfTexts } from '../../texts/shelf-texts.ts';
import { CurveField, paintOfKept } from './CurveField.tsx';
import { PaintField } from './PaintField.tsx';
import { shownStock } from './stock-state.ts';

/** Form fields for a custom pigment that is not in the list. */
export function CustomPigmentFields({
  own,
  curve,
  faults,
}: {
  own: OwnPigment | null;
  curve: Signal<StoredCurve | null>;
  faults: readonly StockFault[];
}) {
  return (
    <fieldset class="shelf-fields shelf-own">
      <legend>{shelfTexts.ownHeading}</legend>
      <PaintField name="name" label={shelfTexts.name} start={own?.name ?? ''} faults={faults} />
      <div class="shelf-row">
        <SelectField
          label={shelfTexts.family}
          name="family"
          options={optionsOf(FAMILY_WORDS)}
          chosen={own?.family ?? 'brown'}
        />
        <SelectField
          label={shelfTexts.hazardOf}
          name="hazard"
          options={optionsOf(HAZARD_WORDS)}
          chosen={own?.hazard ?? 'caution'}
        >
          {shelfTexts.hazardHelp}
        </SelectField>
      </div>
      <label>
        {shelfTexts.caution}
        <textarea name="caution" rows={2} maxLength={2000} defaultValue={own?.caution ?? ''} />
      </label>
      <CurveField
        name="own"
        legend={shelfTexts.colour}
        curve={curve}
        start={own?.curve ? masstone(paintOfKept(own.curve), shownStock.value.surface) : null}
        none={shelfTexts.fromNothing}
      />
    </fieldset>
  );
}
