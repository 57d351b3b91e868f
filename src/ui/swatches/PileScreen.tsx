import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { deltaE00 } from '../../colour/difference.ts';
import { changeWords, differenceWords } from '../../colour/words.ts';
import { BesideWanted } from '../drawn/BesideWanted.tsx';
import { shownOf } from '../drawn/screen.ts';
import { figure } from '../locale.ts';
import { ownStock } from '../shelf/state.ts';
import { saySwatches } from '../words/swatches.ts';
import { PartsFields } from './PartsFields.tsx';
import { PileSeen } from './PileSeen.tsx';
import { foreseenOf } from './pile.ts';
import { cameOut, keepPile, parts } from './piles.ts';
import { forgetPhoto } from './reading.ts';
import { goTo } from './routes.ts';

/**
 * Form for logging a pile: what was mixed, how it looked, and how that differs from the prediction.
 */
export function PileScreen() {
  const note = useSignal('');
  const fault = useSignal('');
  useEffect(() => forgetPhoto, []);
  const foreseen = foreseenOf(parts.value, ownStock.value);
  const seen = cameOut.value;
  const keep = async () => {
    const wrong = await keepPile(note.value);
    fault.value = wrong.trim();
    if (wrong === '') goTo();
  };
  return (
    <>
      <h1 tabIndex={-1}>{saySwatches.pileHeading}</h1>
      <fieldset class="swatch-fields">
        <legend>{saySwatches.pileMixed}</legend>
        <p class="small">{saySwatches.pileAbout}</p>
        <PartsFields
          of={saySwatches.pileMixed}
          parts={parts.value}
          onChange={(next) => {
            parts.value = next;
          }}
        />
      </fieldset>
      <PileSeen />
      {foreseen && seen && (
        <div class="swatch-line swatch-pile" role="status">
          <BesideWanted
            wanted={{ name: saySwatches.pileForeseen, hex: shownOf(foreseen) }}
            mixed={{ name: saySwatches.pileCameOut, hex: shownOf(seen.lab) }}
          />
          <p>
            {[
              saySwatches.differs[differenceWords(deltaE00(foreseen, seen.lab))],
              changeWords(foreseen, seen.lab),
            ]
              .filter(Boolean)
              .join(': ')}{' '}
            <span class="small">({figure(deltaE00(foreseen, seen.lab), 1)})</span>
          </p>
        </div>
      )}
      <label class="swatch-fields">
        {saySwatches.pileNote}
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
          {saySwatches.pileNoteHelp}
        </span>
      </label>
      {fault.value && (
        <p class="field-fault" role="alert">
          {fault.value}
        </p>
      )}
      <p class="swatch-actions">
        <button type="button" class="main" onClick={() => void keep()}>
          {saySwatches.keepPile}
        </button>
      </p>
    </>
  );
}
