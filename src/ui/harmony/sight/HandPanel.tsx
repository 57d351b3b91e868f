import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { changeWords } from '../../../colour/words.ts';
import type { EditedColour } from '../../../harmony/edit.ts';
import { BesideWanted } from '../../drawn/BesideWanted.tsx';
import { shownOf } from '../../drawn/screen.ts';
import { WAY_WORDS } from '../../words/frame.ts';
import { EYE_WAYS, saySight } from '../../words/sight.ts';
import { chosen, studied } from '../state.ts';
import { ByKeys } from './ByKeys.tsx';
import { isBusy } from './gathered.ts';
import {
  correctByEye,
  dropColour,
  joinColours,
  renameColour,
  setSheen,
  splitColour,
  uncorrect,
} from './hand.ts';
import { PatchChoice } from './PatchChoice.tsx';

/** Panel for manual corrections: adds a colour, and edits the selected one. */
export function HandPanel({ canAdd }: { canAdd: boolean }) {
  const index = chosen.value;
  const colour = studied.value[index]?.gathered;
  return (
    <>
      {canAdd && (
        <>
          <p>{saySight.handAbout}</p>
          <PatchChoice />
          <ByKeys />
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
  const busy = isBusy.value;
  const isOnly = studied.value.length === 1;
  return (
    <section class="one-colour" aria-labelledby="one-colour-heading">
      <h2 id="one-colour-heading">{saySight.ofThe(name)}</h2>
      <fieldset class="eye">
        <legend>{saySight.byEye}</legend>
        {EYE_WAYS.map((way) => (
          <button key={way} type="button" disabled={busy} onClick={() => correctByEye(index, way)}>
            {WAY_WORDS[way]}
          </button>
        ))}
      </fieldset>
      {asGathered && (
        <div class="eye-beside">
          <BesideWanted
            wanted={{ hex: shownOf(asGathered), name: saySight.asGathered }}
            mixed={{ hex: shownOf(lab), name: saySight.corrected }}
            difference={changeWords(asGathered, lab)}
          />
          <button type="button" class="quiet" disabled={busy} onClick={() => uncorrect(index)}>
            {saySight.uncorrect}
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
        {saySight.sheen}
      </label>
      <Naming index={index} name={name} />
      {!isOnly && <Joining index={index} />}
      <div class="tool-actions">
        {canSplit && (
          <button type="button" disabled={busy} onClick={() => void splitColour(index)}>
            {saySight.split}
          </button>
        )}
        <button type="button" disabled={busy || isOnly} onClick={() => dropColour(index)}>
          {saySight.drop}
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
        {saySight.nameOf}
        <input
          type="text"
          maxLength={100}
          value={typed}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
          }}
        />
      </label>
      <button type="submit" disabled={isBusy.value}>
        {saySight.rename}
      </button>
    </form>
  );
}

function Joining({ index }: { index: number }) {
  const others = studied.value
    .map(({ gathered }, i) => ({ name: gathered.name, i }))
    .filter(({ i }) => i !== index);
  const other = useSignal(others[0]?.i ?? 0);
  const chosenOther = others.some(({ i }) => i === other.value) ? other.value : others[0]!.i;
  return (
    <form
      class="beside"
      onSubmit={(event) => {
        event.preventDefault();
        joinColours(index, chosenOther);
      }}
    >
      <label>
        {saySight.joinWith}
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
      <button type="submit" disabled={isBusy.value}>
        {saySight.join}
      </button>
    </form>
  );
}
