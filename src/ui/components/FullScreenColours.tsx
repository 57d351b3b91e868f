import { joinWords } from '../../wording.ts';
import './full-screen-colours.css';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { differenceWords } from '../../colour/describe-colour.ts';
import { deltaE00 } from '../../colour/difference.ts';
import type { Lab } from '../../colour/lab.ts';
import { cssColourOf, isGamutMapped } from '../state/screen-colour.ts';
import { fullScreenTexts } from '../texts/full-screen-texts.ts';
import { sharedTexts } from '../texts/shared-texts.ts';
import { afterPaint } from './after-paint.ts';
import { nameWithGamutNote } from './drawn/alternative-text.ts';
import { stayAwake } from './wake-lock.ts';

/** A named colour. */
interface Held {
  readonly name: string;
  readonly lab: Lab;
}

/** Shows one or two colours full-screen, to hold against a dry pile. */
export function FullScreenColours({ colours }: { colours: readonly Held[] }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>
        {fullScreenTexts.open}
      </button>
      {isOpen && <Screenful colours={colours} onLeave={() => setOpen(false)} />}
    </>
  );
}

function Screenful({ colours, onLeave }: { colours: readonly Held[]; onLeave: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  /** Index of the colour that fills the screen; null for both. */
  const [one, setOne] = useState<number | null>(null);
  const [isBare, setBare] = useState(false);
  const left = useRef(false);
  const leave = () => {
    if (left.current) return;
    left.current = true;
    // Hide it at once; repainting the whole page takes a moment longer.
    dialog.current?.classList.add('leaving');
    afterPaint(() => {
      // Remove the history entry added on opening, unless going back closed the dialog.
      if (history.state?.held) history.back();
      onLeave();
    });
  };
  useEffect(() => {
    const element = dialog.current;
    const opener = document.activeElement as HTMLElement | null;
    element?.showModal();
    history.pushState({ held: true }, '');
    addEventListener('popstate', leave);
    const sleep = stayAwake();
    return () => {
      removeEventListener('popstate', leave);
      sleep();
      opener?.focus();
    };
  }, []);
  const shown = one === null ? colours : colours.slice(one, one + 1);
  const [first, second] = colours;
  const words =
    first && second ? sharedTexts.differs[differenceWords(deltaE00(first.lab, second.lab))] : '';
  return (
    <dialog
      ref={dialog}
      class="held"
      aria-labelledby={`${id}-heading`}
      aria-describedby={`${id}-words`}
      onCancel={(event) => {
        event.preventDefault();
        leave();
      }}
    >
      <button type="button" class="held-colours" onClick={leave} tabIndex={isBare ? 0 : -1}>
        {shown.map(({ name, lab }) => {
          const colour = cssColourOf(lab);
          return (
            <span key={name} class="held-colour" style={{ background: colour }}>
              <span class="unseen">{nameWithGamutNote(name, colour)}</span>
              {isGamutMapped(colour) && <NearestCorner />}
            </span>
          );
        })}
        <span class="unseen">. {fullScreenTexts.leave}</span>
      </button>
      <div class="held-words" hidden={isBare}>
        <h2 id={`${id}-heading`}>{fullScreenTexts.heading}</h2>
        <p id={`${id}-words`}>
          {joinWords(shown.map(({ name, lab }) => nameWithGamutNote(name, cssColourOf(lab))))}.{' '}
          {words}
        </p>
        {colours.length > 1 && (
          <fieldset class="choice">
            <legend class="unseen">{fullScreenTexts.which}</legend>
            {[null, ...colours.keys()].map((which) => (
              <label key={which}>
                <input
                  type="radio"
                  name={`${id}-which`}
                  checked={one === which}
                  onChange={() => setOne(which)}
                />
                <span>{which === null ? fullScreenTexts.both : colours[which]!.name}</span>
              </label>
            ))}
          </fieldset>
        )}
        <p class="held-actions">
          <button type="button" class="main" onClick={leave}>
            {fullScreenTexts.leave}
          </button>
          <button
            type="button"
            onClick={() => {
              setBare(true);
              dialog.current?.querySelector<HTMLElement>('.held-colours')?.focus();
            }}
          >
            {fullScreenTexts.only}
          </button>
        </p>
        <p class="small">
          {fullScreenTexts.note} {fullScreenTexts.help}
        </p>
      </div>
    </dialog>
  );
}

/** Marks a colour outside the display's gamut, as the drawings do: a turned-down corner. */
function NearestCorner() {
  return (
    <svg class="held-corner" viewBox="0 0 10 10" aria-hidden="true">
      <path d="M10 0H0l10 10z" fill="#fff" stroke="#161616" stroke-width="1" />
    </svg>
  );
}
