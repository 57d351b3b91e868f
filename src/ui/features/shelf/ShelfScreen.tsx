import './shelf.css';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { lazy } from '../../app/lazy-screen.tsx';
import { hrefOf, route } from '../../state/route.ts';
import { book } from '../../state/studio.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { SWATCHES } from '../calibration/calibration-routes.ts';
import { PaintDetail } from './PaintDetail.tsx';
import { PaintForm } from './PaintForm.tsx';
import { StockList } from './StockList.tsx';
import { isStocked, shownStock } from './stock-state.ts';

const SwatchesScreen = lazy(
  async () => (await import('../calibration/CalibrationScreen.tsx')).CalibrationScreen,
);

/** The shelf, or the calibration pages within it. */
export const ShelfScreen = () =>
  route.value.within[0] === SWATCHES ? <SwatchesScreen /> : <Stocked />;

/** The shelf, with the open paint or form beside it, or instead of it on a phone. */
function Stocked() {
  const [what, doing] = route.value.within;
  const side = useRef<HTMLElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const open = what === undefined ? '' : [what, doing].join('/');
  const before = useRef(open);
  const scrolled = useRef(0);
  // Focus management: an opened pane gets the focus; when it closes, focus returns to its line in
  // the list, otherwise to the heading.
  useLayoutEffect(() => {
    if (open === before.current) return;
    const [from] = before.current.split('/');
    before.current = open;
    if (open === '') {
      scrollTo(0, scrolled.current);
      const line = document.querySelector<HTMLElement>(`[data-entry="${CSS.escape(from!)}"]`);
      (line ?? heading.current)?.focus({ preventScroll: true });
      return;
    }
    if (from === '') scrolled.current = scrollY;
    side.current?.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
    if (side.current && side.current.getBoundingClientRect().top < 0)
      side.current.scrollIntoView({ block: 'start' });
  }, [open]);
  if (book.value === null) return <Opening />;
  return (
    <section class="page shelf-page" data-open={what === undefined ? 'no' : 'yes'}>
      <div class="shelf-head">
        <p class="shelf-crumb">
          <a href={hrefOf('book')}>{shelfTexts.back}</a>
        </p>
        <h1 tabIndex={-1} ref={heading}>
          {shelfTexts.heading}
        </h1>
      </div>
      <div class="shelf-parts">
        <StockList />
        {what !== undefined && (
          <section class="shelf-side" ref={side}>
            <p class="shelf-all">
              <a href={hrefOf('book', 'shelf')}>{shelfTexts.allOfIt}</a>
            </p>
            <Side what={what} doing={doing} />
          </section>
        )}
      </div>
    </section>
  );
}

function Opening() {
  return (
    <section class="page">
      <h1 tabIndex={-1}>{shelfTexts.heading}</h1>
      <p role="status">{sharedTexts.bookOpening}</p>
    </section>
  );
}

function Side({ what, doing }: { what: string; doing: string | undefined }) {
  if (what === 'new') return <PaintForm key="new" entry={null} />;
  const entry = shownStock.value.entries.find(({ id }) => id === what);
  if (!entry) return <p>{shelfTexts.gone}</p>;
  return doing === 'edit' && isStocked.value ? (
    <PaintForm key={what} entry={entry} />
  ) : (
    <PaintDetail key={what} entry={entry} />
  );
}
