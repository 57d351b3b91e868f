import { MakeDrapery } from '../drapery/MakeDrapery.tsx';
import { LayOut } from '../palette/LayOut.tsx';
import { say } from '../words/frame.ts';
import { StepBack } from './sight/StepBack.tsx';
import { keep, kept, name, note } from './state.ts';

/** Name and note of the harmony; both may be empty. */
export function WordsForm() {
  return (
    <section class="keep" aria-labelledby="words-heading">
      <h2 id="words-heading">{say.wordsHeading}</h2>
      <label>
        {say.nameOf}
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
        {say.noteOf}
        <textarea
          rows={3}
          maxLength={20000}
          placeholder={say.notePlaceholder}
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
export function KeepBar() {
  return (
    <div class="keep-bar">
      <div role="status">
        {kept.value ? (
          <p class="small">{say.kept}</p>
        ) : (
          <button type="button" class="main" onClick={() => void keep()}>
            {say.keepHarmony}
          </button>
        )}
      </div>
      {kept.value && <MakeDrapery main />}
      <StepBack />
    </div>
  );
}

/** Next steps after a harmony is saved. */
export function Onward() {
  if (!kept.value) return <MakeDrapery />;
  return (
    <section class="onward" aria-labelledby="onward-heading">
      <h2 id="onward-heading">{say.onward}</h2>
      <p>{say.onwardHarmony}</p>
      <p class="main-actions">
        <LayOut id={kept.value.id} />
      </p>
    </section>
  );
}
