import { say } from '../words.ts';
import { keep, kept, name, note } from './state.ts';

/** Name and words; both may stay empty. The one main action of this place. */
export function KeepForm() {
  return (
    <form
      class="keep"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
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
      {kept.value ? (
        <p role="status">{say.kept}</p>
      ) : (
        <button type="submit" class="main">
          {say.keepHarmony}
        </button>
      )}
    </form>
  );
}
