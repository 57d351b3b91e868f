import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { changeWords } from '../../../colour/describe-colour.ts';
import type { EditedColour } from '../../../harmony/manual-edits.ts';
import { ColourComparison } from '../../components/drawn/ColourComparison.tsx';
import { harmonyColours, selectedIndex } from '../../state/harmony/current-harmony.ts';
import { isGathering } from '../../state/harmony/gather-again.ts';
import {
  correctByEye,
  dropColour,
  mergeHarmonyColours,
  removeCorrections,
  renameColour,
  setSheen,
  splitColour,
} from '../../state/harmony/manual-corrections.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { EYE_WAYS, photographTexts } from '../../texts/photograph-texts.ts';
import { VARIANT_WAY_WORDS } from '../../texts/shared-texts.ts';
import { FocusMarkerButton } from './FocusMarkerButton.tsx';
import { PatchSizeChoice } from './PatchSizeChoice.tsx';

/** Panel for manual corrections: adds a colour, and edits the selected one. */
export function ManualCorrectionPanel({ canAdd }: { canAdd: boolean }) {
  const index = selectedIndex.value;
  const colour = harmonyColours.value[index]?.gathered;
  return (
    <>
      {canAdd && (
        <>
          <p>{photographTexts.handAbout}</p>
          <PatchSizeChoice />
          <FocusMarkerButton />
        </>
      )}
      {colour && <OneColour key={colour.name} index={index} colour={colour} canSplit={canAdd} />}
    </>
  );
}

function OneColour({
  index,
  colour,
  canSplit,
}: {
  index: number;
  colour: EditedColour;
  canSplit: boolean;
}) {
  const { name, lab, asGathered, sheen } = colour;
  const busy = isGathering.value;
  const isOnly = harmonyColours.value.length === 1;
  return (
    <section class="one-colour" aria-labelledby="one-colour-heading">
      <h2 id="one-colour-heading">{photographTexts.ofThe(name)}</h2>
      <fieldset class="eye">
        <legend>{photographTexts.byEye}</legend>
        {EYE_WAYS.map((way) => (
          <button key={way} type="button" disabled={busy} onClick={() => correctByEye(index, way)}>
            {VARIANT_WAY_WORDS[way]}
          </button>
        ))}
      </fieldset>
      {asGathered && (
        <div class="eye-beside">
          <ColourComparison
            wanted={{ hex: cssColourOf(asGathered), name: photographTexts.asGathered }}
            mixed={{ hex: cssColourOf(lab), name: photographTexts.corrected }}
            difference={changeWords(asGathered, lab)}
          />
          <button
            type="button"
            class="quiet"
            disabled={busy}
            onClick={() => removeCorrections(index)}
          >
            {photographTexts.uncorrect}
          </button>
        </div>
      )}
      <label class="check">
        <input
          type="checkbox"
          checked={sheen === true}
          disabled={busy}
          onChange={(event) => setSheen(index, event.currentTarget.checked)}
        />
        {photographTexts.sheen}
      </label>
      <Naming index={index} name={name} />
      {!isOnly && <Joining index={index} />}
      <div class="tool-actions">
        {canSplit && (
          <button type="button" disabled={busy} onClick={() => void splitColour(index)}>
            {photographTexts.split}
          </button>
        )}
        <button type="button" disabled={busy || isOnly} onClick={() => dropColour(index)}>
          {photographTexts.drop}
        </button>
      </div>
    </section>
  );
}

function Naming({ index, name }: { index: number; name: string }) {
  const typed = useSignal(name);
  useEffect(() => {
    typed.value = name;
  }, [name]);
  return (
    <form
      class="beside"
      onSubmit={(event) => {
        event.preventDefault();
        renameColour(index, typed.value);
      }}
    >
      <label>
        {photographTexts.nameOf}
        <input
          type="text"
          maxLength={100}
          value={typed}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
          }}
        />
      </label>
      <button type="submit" disabled={isGathering.value}>
        {photographTexts.rename}
      </button>
    </form>
  );
}

function Joining({ index }: { index: number }) {
  const others = harmonyColours.value
    .map(({ gathered }, i) => ({ name: gathered.name, i }))
    .filter(({ i }) => i !== index);
  const other = useSignal(others[0]?.i ?? 0);
  const chosenOther = others.some(({ i }) => i === other.value) ? other.value : others[0]!.i;
  return (
    <form
      class="beside"
      onSubmit={(event) => {
        event.preventDefault();
        mergeHarmonyColours(index, chosenOther);
      }}
    >
      <label>
        {photographTexts.joinWith}
        <select
          value={String(chosenOther)}
          onChange={(event) => {
            other.value = Number(event.currentTarget.value);
          }}
        >
          {others.map(({ name, i }) => (
            <option key={name} value={String(i)}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" disabled={isGathering.value}>
        {photographTexts.join}
      </button>
    </form>
  );
}
