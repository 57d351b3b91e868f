import './swatches.css';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { hrefOf, route } from '../route.ts';
import { isStocked, ownStock } from '../shelf/state.ts';
import { book } from '../studio.ts';
import { say } from '../words/frame.ts';
import { sayShelf } from '../words/shelf.ts';
import { saySwatches } from '../words/swatches.ts';
import { CardForm } from './CardForm.tsx';
import { CardSheet } from './CardSheet.tsx';
import { CurvesScreen } from './CurvesScreen.tsx';
import { FitScreen } from './FitScreen.tsx';
import { Overview } from './Overview.tsx';
import { PileScreen } from './PileScreen.tsx';
import { ReadScreen } from './ReadScreen.tsx';
import { lessons } from './records.ts';
import { SWATCHES } from './routes.ts';

/**
 * Calibration of the studio's own paints: cards, photographs, measured curves, piles, and the fit.
 */
export function SwatchesScreen() {
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
          {toAll ? saySwatches.toAll : saySwatches.toShelf}
        </a>
      </p>
      <Page what={what} id={id} />
    </section>
  );
}

function Page({ what, id }: { what: string | undefined; id: string | undefined }) {
  if (book.value === null || lessons.value === null)
    return (
      <>
        <h1 tabIndex={-1}>{saySwatches.heading}</h1>
        <p role="status">{say.bookOpening}</p>
      </>
    );
  if (!isStocked.value || (ownStock.value.white === null && what !== undefined))
    return (
      <>
        <h1 tabIndex={-1}>{saySwatches.heading}</h1>
        <p class="lead">{saySwatches.lead}</p>
        <p>{isStocked.value ? saySwatches.noWhite : saySwatches.notStocked}</p>
        <p>
          <a class="button" href={hrefOf('book', 'shelf')}>
            {sayShelf.open}
          </a>
        </p>
      </>
    );
  switch (what) {
    case 'new':
      return <CardForm />;
    case 'card':
      return <CardSheet key={id} id={id ?? ''} />;
    case 'read':
      return <ReadScreen key={id} id={id ?? ''} />;
    case 'fit':
      return <FitScreen />;
    case 'curves':
      return <CurvesScreen key={id} id={id ?? null} />;
    case 'pile':
      return <PileScreen />;
    default:
      return <Overview />;
  }
}
