import { name, note, savedHarmony, saveHarmony } from '../../state/harmony/current-harmony.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { MakeDraperyButton } from '../drapery/MakeDraperyButton.tsx';
import { LayOutButton } from '../palette/LayOutButton.tsx';
import { UndoButton } from './UndoButton.tsx';

/** Name and note of the harmony; both may be empty. */
export function NameAndNoteForm() {
  return (
    <section class="keep" aria-labelledby="words-heading">
      <h2 id="words-heading">{sharedTexts.wordsHeading}</h2>
      <label>
        {sharedTexts.nameOf}
        <input
          type="text"
          maxLength={200}
          value={name}
          onInput={(event) => {
            name.value = event.currentTarget.value;
          }}
        />
      </label>
      <label>
        {sharedTexts.noteOf}
        <textarea
          rows={3}
          maxLength={20000}
          placeholder={sharedTexts.notePlaceholder}
          value={note}
          onInput={(event) => {
            note.value = event.currentTarget.value;
          }}
        />
      </label>
    </section>
  );
}

/** Save button, link to drapery and undo; stays within reach while the page scrolls. */
export function SaveBar() {
  return (
    <div class="keep-bar">
      <div role="status">
        {savedHarmony.value ? (
          <p class="small">{sharedTexts.kept}</p>
        ) : (
          <button type="button" class="main" onClick={() => void saveHarmony()}>
            {sharedTexts.keepHarmony}
          </button>
        )}
      </div>
      {savedHarmony.value && <MakeDraperyButton main />}
      <UndoButton />
    </div>
  );
}

/** Next steps after a harmony is saved. */
export function HarmonyNextSteps() {
  if (!savedHarmony.value) return <MakeDraperyButton />;
  return (
    <section class="onward" aria-labelledby="onward-heading">
      <h2 id="onward-heading">{sharedTexts.onward}</h2>
      <p>{sharedTexts.onwardHarmony}</p>
      <p class="main-actions">
        <LayOutButton id={savedHarmony.value.id} />
      </p>
    </section>
  );
}
