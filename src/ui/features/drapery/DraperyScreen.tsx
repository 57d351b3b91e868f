import './drapery.css';
import { BookIcon, PrintIcon } from '../../components/drawn/icons.tsx';
import {
  areAllComputed,
  drapingProgress,
  isDrapingStopped,
  resumeDraping,
  stopDraping,
} from '../../state/drapery/cloth-results.ts';
import {
  canUndoScheme,
  scheme,
  setSchemeName,
  undoScheme,
} from '../../state/drapery/drapery-scheme.ts';
import {
  currentDraperyName,
  draperyStage,
  isDraperySaved,
  replaceDrapery,
  saveDrapery,
  savedDrapery,
} from '../../state/drapery/saved-drapery.ts';
import { hrefOf } from '../../state/route.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { sharedTexts as sayAll } from '../../texts/shared-texts.ts';
import { LayOutButton } from '../palette/LayOutButton.tsx';
import { ClothColourChoice } from './ClothColourChoice.tsx';
import { SchemeRelations } from './ColourRelations.tsx';
import { GarmentEditor } from './GarmentEditor.tsx';
import { GarmentWall } from './GarmentWall.tsx';
import { NewDrapery } from './NewDrapery.tsx';
import { PrintedLadders } from './PrintedLadders.tsx';
import { saveFormula } from './save-formula.ts';

/** The Drapery place: garments, their ladders, relations, and saving. */
export function DraperyScreen() {
  if (draperyStage.value === 'missing')
    return (
      <section class="page">
        <h1 tabIndex={-1}>{draperyTexts.heading}</h1>
        <p class="lead">{draperyTexts.missing}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('book')}>
            {sayAll.toBook}
          </a>
          <a class="button" href={hrefOf('drapery')} onClick={() => replaceDrapery()}>
            {draperyTexts.another}
          </a>
        </p>
      </section>
    );
  if (scheme.value.garments.length === 0) return <NewDrapery />;
  return (
    <section class="page drapery has-bar">
      <div class="title">
        <h1 tabIndex={-1}>{scheme.value.name || draperyTexts.heading}</h1>
        <KeepLine />
      </div>
      <Work />
      <GarmentWall />
      <ClothColourChoice />
      <GarmentEditor />
      <SchemeRelations />
      <section class="drapery-keep" aria-labelledby="drapery-words">
        <h2 id="drapery-words">{sayAll.wordsHeading}</h2>
        <label>
          {draperyTexts.nameOf}
          <input
            type="text"
            maxLength={200}
            placeholder={currentDraperyName()}
            value={scheme.value.name}
            onInput={(event) => setSchemeName(event.currentTarget.value)}
          />
        </label>
        <p class="main-actions">
          <button type="button" disabled={!areAllComputed.value} onClick={() => void saveFormula()}>
            <BookIcon size={20} />
            {draperyTexts.keepFormula}
          </button>
          <button type="button" disabled={!areAllComputed.value} onClick={() => print()}>
            <PrintIcon size={20} />
            {draperyTexts.print}
          </button>
          <a class="button" href={hrefOf('drapery')} onClick={() => replaceDrapery()}>
            {draperyTexts.another}
          </a>
        </p>
      </section>
      <PrintedLadders />
    </section>
  );
}

/** The main action (save, or lay out) and undo. */
function KeepLine() {
  return (
    <div class="drapery-bar keep-bar">
      {canUndoScheme.value && (
        <button type="button" onClick={undoScheme}>
          {draperyTexts.undo}
        </button>
      )}
      {isDraperySaved() ? (
        <>
          <p class="small">{draperyTexts.kept}</p>
          {savedDrapery.value && <LayOutButton id={savedDrapery.value.id} main />}
        </>
      ) : (
        <button
          type="button"
          class="main"
          disabled={!areAllComputed.value}
          onClick={() => void saveDrapery()}
        >
          {savedDrapery.value ? draperyTexts.keepChanges : draperyTexts.keep}
        </button>
      )}
    </div>
  );
}

/** Progress of the computation, with a stop button, or a resume button after a stop. */
function Work() {
  const done = drapingProgress.value;
  return (
    <div class="work-line roomy" role="status">
      {done !== null && (
        <>
          <p>{draperyTexts.working}</p>
          <progress max={1} value={done} aria-label={draperyTexts.working} />
          <button type="button" class="quiet" onClick={stopDraping}>
            {draperyTexts.stop}
          </button>
        </>
      )}
      {isDrapingStopped.value && done === null && !areAllComputed.value && (
        <>
          <p>{draperyTexts.stoppedWords}</p>
          <button type="button" onClick={resumeDraping}>
            {draperyTexts.goOn}
          </button>
        </>
      )}
    </div>
  );
}
