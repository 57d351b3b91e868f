import './drapery.css';
import { BookIcon, PrintIcon } from '../drawn/icons.tsx';
import { LayOut } from '../palette/LayOut.tsx';
import { hrefOf } from '../route.ts';
import { say } from '../words/drapery.ts';
import { say as sayAll } from '../words/frame.ts';
import { Begin } from './Begin.tsx';
import { goOn, isWhole, stop, stopped, working } from './cloths.ts';
import { keepFormula } from './formula.ts';
import { GarmentBench } from './GarmentBench.tsx';
import { PickColour } from './PickColour.tsx';
import { Printed } from './Printed.tsx';
import { RelationsWords } from './RelationsWords.tsx';
import { begin, calledNow, isSaved, keep, kept, stage } from './saved.ts';
import { callIt, canUndo, scheme, undo } from './state.ts';
import { Wall } from './Wall.tsx';

/** The Drapery place: garments, their ladders, relations, and saving. */
export function DraperyScreen() {
  if (stage.value === 'missing')
    return (
      <section class="page">
        <h1 tabIndex={-1}>{say.heading}</h1>
        <p class="lead">{say.missing}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('book')}>
            {sayAll.toBook}
          </a>
          <a class="button" href={hrefOf('drapery')} onClick={() => begin()}>
            {say.another}
          </a>
        </p>
      </section>
    );
  if (scheme.value.garments.length === 0) return <Begin />;
  return (
    <section class="page drapery has-bar">
      <div class="title">
        <h1 tabIndex={-1}>{scheme.value.name || say.heading}</h1>
        <KeepLine />
      </div>
      <Work />
      <Wall />
      <PickColour />
      <GarmentBench />
      <RelationsWords />
      <section class="drapery-keep" aria-labelledby="drapery-words">
        <h2 id="drapery-words">{sayAll.wordsHeading}</h2>
        <label>
          {say.nameOf}
          <input
            type="text"
            maxLength={200}
            placeholder={calledNow()}
            value={scheme.value.name}
            onInput={(event) => callIt(event.currentTarget.value)}
          />
        </label>
        <p class="main-actions">
          <button type="button" disabled={!isWhole.value} onClick={() => void keepFormula()}>
            <BookIcon size={20} />
            {say.keepFormula}
          </button>
          <button type="button" disabled={!isWhole.value} onClick={() => print()}>
            <PrintIcon size={20} />
            {say.print}
          </button>
          <a class="button" href={hrefOf('drapery')} onClick={() => begin()}>
            {say.another}
          </a>
        </p>
      </section>
      <Printed />
    </section>
  );
}

/** The main action (save, or lay out) and undo. */
function KeepLine() {
  return (
    <div class="drapery-bar keep-bar">
      {canUndo.value && (
        <button type="button" onClick={undo}>
          {say.undo}
        </button>
      )}
      {isSaved() ? (
        <>
          <p class="small">{say.kept}</p>
          {kept.value && <LayOut id={kept.value.id} main />}
        </>
      ) : (
        <button type="button" class="main" disabled={!isWhole.value} onClick={() => void keep()}>
          {kept.value ? say.keepChanges : say.keep}
        </button>
      )}
    </div>
  );
}

/** Progress of the computation, with a stop button, or a resume button after a stop. */
function Work() {
  const done = working.value;
  return (
    <div class="work-line roomy" role="status">
      {done !== null && (
        <>
          <p>{say.working}</p>
          <progress max={1} value={done} aria-label={say.working} />
          <button type="button" class="quiet" onClick={stop}>
            {say.stop}
          </button>
        </>
      )}
      {stopped.value && done === null && !isWhole.value && (
        <>
          <p>{say.stoppedWords}</p>
          <button type="button" onClick={goOn}>
            {say.goOn}
          </button>
        </>
      )}
    </div>
  );
}
