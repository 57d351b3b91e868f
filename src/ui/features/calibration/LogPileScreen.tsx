import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { changeWords, differenceWords } from '../../../colour/describe-colour.ts';
import { deltaE00 } from '../../../colour/difference.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { formatNumber } from '../../state/locale-format.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';
import { CompositionFields } from './CompositionFields.tsx';
import { goTo } from './calibration-routes.ts';
import { forgetPhoto } from './card-reading.ts';
import { ObservedColourFields } from './ObservedColourFields.tsx';
import { keepPile, loggedParts, observedPile } from './pile-log.ts';
import { predictPile } from './pile-prediction.ts';

/**
 * Form for logging a pile: what was mixed, how it looked, and how that differs from the prediction.
 */
export function LogPileScreen() {
  const note = useSignal('');
  const fault = useSignal('');
  useEffect(() => forgetPhoto, []);
  const foreseen = predictPile(loggedParts.value, ownStock.value);
  const seen = observedPile.value;
  const keep = async () => {
    const wrong = await keepPile(note.value);
    fault.value = wrong.trim();
    if (wrong === '') goTo();
  };
  return (
    <>
      <h1 tabIndex={-1}>{calibrationTexts.pileHeading}</h1>
      <fieldset class="swatch-fields">
        <legend>{calibrationTexts.pileMixed}</legend>
        <p class="small">{calibrationTexts.pileAbout}</p>
        <CompositionFields
          of={calibrationTexts.pileMixed}
          parts={loggedParts.value}
          onChange={(next) => {
            loggedParts.value = next;
          }}
        />
      </fieldset>
      <ObservedColourFields />
      {foreseen && seen && (
        <div class="swatch-line swatch-pile" role="status">
          <ColourComparison
            wanted={{ name: calibrationTexts.pileForeseen, hex: cssColourOf(foreseen) }}
            mixed={{ name: calibrationTexts.pileCameOut, hex: cssColourOf(seen.lab) }}
          />
          <p>
            {[
              calibrationTexts.differs[differenceWords(deltaE00(foreseen, seen.lab))],
              changeWords(foreseen, seen.lab),
            ]
              .filter(Boolean)
              .join(': ')}{' '}
            <span class="small">({formatNumber(deltaE00(foreseen, seen.lab), 1)})</span>
          </p>
        </div>
      )}
      <label class="swatch-fields">
        {calibrationTexts.pileNote}
        <input
          type="text"
          maxLength={2000}
          value={note}
          aria-describedby="swatch-note-help"
          onInput={(event) => {
            note.value = event.currentTarget.value;
          }}
        />
        <span class="small swatch-help" id="swatch-note-help">
          {calibrationTexts.pileNoteHelp}
        </span>
      </label>
      {fault.value && (
        <p class="field-fault" role="alert">
          {fault.value}
        </p>
      )}
      <p class="swatch-actions">
        <button type="button" class="main" onClick={() => void keep()}>
          {calibrationTexts.keepPile}
        </button>
      </p>
    </>
  );
}
