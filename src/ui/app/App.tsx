import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import {
  BookIcon,
  DraperyIcon,
  HarmonyIcon,
  PaletteIcon,
  WalkIcon,
} from '../components/drawn/icons.tsx';
import { WalkScreen } from '../features/walk/WalkScreen.tsx';
import { hrefOf, PLACES, type Place, place, route } from '../state/route.ts';
import { dismissReadNotice, notice, undoNotice } from '../state/studio.ts';
import { PLACE_NAMES, sharedTexts } from '../texts/shared-texts.ts';
import { activateUpdate } from './app-update.ts';
import { lazy } from './lazy-screen.tsx';
import { SaveLine } from './SaveLine.tsx';

const HarmonyScreen = lazy(
  async () => (await import('../features/harmony/HarmonyScreen.tsx')).HarmonyScreen,
);
const DraperyScreen = lazy(
  async () => (await import('../features/drapery/DraperyScreen.tsx')).DraperyScreen,
);
const PaletteScreen = lazy(
  async () => (await import('../features/palette/PaletteScreen.tsx')).PaletteScreen,
);
const BookScreen = lazy(async () => (await import('../features/book/BookScreen.tsx')).BookScreen);
const GuideScreen = lazy(
  async () => (await import('../features/guide/GuideScreen.tsx')).GuideScreen,
);
const ShelfScreen = lazy(
  async () => (await import('../features/shelf/ShelfScreen.tsx')).ShelfScreen,
);

/** Root component: navigation, save line, the screen of the current route, and notices. */
export function App() {
  return (
    <>
      <button type="button" class="skip" onClick={toContents}>
        {sharedTexts.skip}
      </button>
      <header class="head">
        <p class="wordmark">Kingcup</p>
        <Places />
        <SaveLine />
      </header>
      <main id="contents" tabIndex={-1}>
        <Screen />
      </main>
      <Notices />
    </>
  );
}

const toContents = () => document.getElementById('contents')?.focus();

function Screen() {
  const where = place.value;
  const { lost, open } = route.value;
  const onShelf = where === 'book' && open === 'shelf';
  const inGuide = where === 'book' && open === 'guide';
  const first = useRef(true);
  // Focus the heading of a new place so that it is announced like a new page. A layout effect, so
  // that a key pressed at once already acts from there.
  useLayoutEffect(() => {
    if (first.current) first.current = false;
    else document.querySelector<HTMLElement>('main h1')?.focus();
    document.title = `${lost ? sharedTexts.lostHeading : onShelf ? sharedTexts.shelf : inGuide ? sharedTexts.guide : PLACE_NAMES[where]} · Kingcup`;
  }, [where, onShelf, inGuide, lost]);
  useEffect(dismissReadNotice, [where, open]);
  if (lost) return <Lost />;
  switch (where) {
    case 'walk':
      return <WalkScreen />;
    case 'harmony':
      return <HarmonyScreen />;
    case 'book':
      if (inGuide) return <GuideScreen />;
      return onShelf ? <ShelfScreen /> : <BookScreen />;
    case 'drapery':
      return <DraperyScreen />;
    case 'palette':
      return <PaletteScreen />;
  }
}

/** Page for an address that does not exist. */
function Lost() {
  return (
    <section class="page">
      <h1 tabIndex={-1}>{sharedTexts.lostHeading}</h1>
      <p class="lead">{sharedTexts.lost}</p>
      <p class="main-actions">
        <a class="button main" href={hrefOf('walk')}>
          {sharedTexts.toWalk}
        </a>
        <a class="button" href={hrefOf('book')}>
          {sharedTexts.toBook}
        </a>
      </p>
    </section>
  );
}

const ICONS: Record<Place, JSX.Element> = {
  walk: <WalkIcon />,
  harmony: <HarmonyIcon />,
  drapery: <DraperyIcon />,
  palette: <PaletteIcon />,
  book: <BookIcon />,
};

/** What was last open in each place, so that its link leads back there. */
const lastOpen: Partial<Record<Place, string>> = {};

function Places() {
  const { place: here, open, lost } = route.value;
  if (open !== null) lastOpen[here] = open;
  // A new drapery has no id yet; without this the link would lead to the previous one.
  else if (here === 'drapery') delete lastOpen.drapery;
  return (
    <nav class="places" aria-label={sharedTexts.places}>
      <ul>
        {PLACES.map((to) => (
          <li key={to}>
            <a
              href={hrefOf(to, to === 'harmony' || to === 'drapery' ? lastOpen[to] : undefined)}
              aria-current={to === here && !lost ? 'page' : undefined}
            >
              {ICONS[to]}
              <span>{PLACE_NAMES[to]}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function Notices() {
  const shown = notice.value;
  const update = activateUpdate.value;
  return (
    <div class="notices" role="status">
      {shown && (
        <div class={shown.bad ? 'notice bad' : 'notice'}>
          <p>{shown.text}</p>
          {shown.undo && (
            <button type="button" class="quiet" onClick={() => void undoNotice()}>
              {sharedTexts.undo}
            </button>
          )}
          <button
            type="button"
            class="quiet"
            onClick={() => {
              notice.value = null;
            }}
          >
            {sharedTexts.close}
          </button>
        </div>
      )}
      {update && (
        <div class="notice">
          <p>{sharedTexts.updateWaits}</p>
          <button type="button" class="quiet" onClick={() => void update()}>
            {sharedTexts.updateNow}
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              activateUpdate.value = null;
            }}
          >
            {sharedTexts.later}
          </button>
        </div>
      )}
    </div>
  );
}
