import './calibration.css';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { evidenceEntries } from '../../state/calibration/evidence.ts';
import { hrefOf, route } from '../../state/route.ts';
import { book } from '../../state/studio.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { isStocked, ownStock } from '../shelf/stock-state.ts';
import { CalibrationOverview } from './CalibrationOverview.tsx';
import { CardForm } from './CardForm.tsx';
import { SWATCHES } from './calibration-routes.ts';
import { FitScreen } from './FitScreen.tsx';
import { LogPileScreen } from './LogPileScreen.tsx';
import { MeasuredCurvesScreen } from './MeasuredCurvesScreen.tsx';
import { ReadCardScreen } from './ReadCardScreen.tsx';
import { SavedCard } from './SavedCard.tsx';

/**
 * Calibration of the studio's own paints: cards, photographs, measured curves, piles, and the fit.
 */
export function CalibrationScreen() {
  const [, what, id] = route.value.within;
  const heading = useRef<HTMLElement>(null);
  const open = [what, id].join('/');
  const first = useRef(true);
  // Each of its pages behaves like a new page: it starts at the top, and its heading gets the
  // focus.
  useLayoutEffect(() => {
    if (first.current && what === undefined) {
      first.current = false;
      return;
    }
    first.current = false;
    scrollTo(0, 0);
    heading.current?.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
  }, [open]);
  const toAll = what !== undefined;
  return (
    <section class="page swatch-page" ref={heading}>
      <p class="shelf-crumb swatch-screen">
        <a href={toAll ? hrefOf('book', 'shelf', SWATCHES) : hrefOf('book', 'shelf')}>
          {toAll ? calibrationTexts.toAll : calibrationTexts.toShelf}
        </a>
      </p>
      <Page what={what} id={id} />
    </section>
  );
}

function Page({ what, id }: { what: string | undefined; id: string | undefined }) {
  if (book.value === null || evidenceEntries.value === null)
    return (
      <>
        <h1 tabIndex={-1}>{calibrationTexts.heading}</h1>
        <p role="status">{sharedTexts.bookOpening}</p>
      </>
    );
  if (!isStocked.value || (ownStock.value.white === null && what !== undefined))
    return (
      <>
        <h1 tabIndex={-1}>{calibrationTexts.heading}</h1>
        <p class="lead">{calibrationTexts.lead}</p>
        <p>{isStocked.value ? calibrationTexts.noWhite : calibrationTexts.notStocked}</p>
        <p>
          <a class="button" href={hrefOf('book', 'shelf')}>
            {shelfTexts.open}
          </a>
        </p>
      </>
    );
  switch (what) {
    case 'new':
      return <CardForm />;
    case 'card':
      return <SavedCard key={id} id={id ?? ''} />;
    case 'read':
      return <ReadCardScreen key={id} id={id ?? ''} />;
    case 'fit':
      return <FitScreen />;
    case 'curves':
      return <MeasuredCurvesScreen key={id} id={id ?? null} />;
    case 'pile':
      return <LogPileScreen />;
    default:
      return <CalibrationOverview />;
  }
}
