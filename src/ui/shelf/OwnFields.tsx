import type { Signal } from '@preact/signals';
import type { KeptCurve, OwnPigment } from '../../pigment/stock.ts';
import type { StockFault } from '../../pigment/validate.ts';
import { masstone } from '../../pigment/white.ts';
import { FAMILY_WORDS, HAZARD_WORDS, sayShelf } from '../words/shelf.ts';
import { Choice, optionsOf } from './Choice.tsx';
import { CurveField, paintOfKept } from './CurveField.tsx';
import { Field } from './Field.tsx';
import { shownStock } from './state.ts';

/** Form fields for a custom pigment that is not in the list. */
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
        <Choice
          label={sayShelf.family}
          name="family"
          options={optionsOf(FAMILY_WORDS)}
          chosen={own?.family ?? 'brown'}
        />
        <Choice
          label={sayShelf.hazardOf}
          name="hazard"
          options={optionsOf(HAZARD_WORDS)}
          chosen={own?.hazard ?? 'caution'}
        >
          {sayShelf.hazardHelp}
        </Choice>
      </div>
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
