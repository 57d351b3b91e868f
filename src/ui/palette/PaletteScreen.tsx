import './palette.css';
import { useEffect, useLayoutEffect } from 'preact/hooks';
import { isDay } from '../../palette/calendar.ts';
import { hrefOf, route } from '../route.ts';
import { say } from '../words/frame.ts';
import { sayPalette } from '../words/palette.ts';
import { DayView } from './DayView.tsx';
import { date, kept, passage } from './days.ts';
import { PassageView } from './PassageView.tsx';
import { SeatsView } from './SeatsView.tsx';
import { SheetView } from './SheetView.tsx';

/** The Palette place: the day, its morning sheet, the seat order, or one passage. */
export function PaletteScreen() {
  const { open } = route.value;
  const day = kept.value?.palettes.find(({ id }) => id === open)?.body.date;
  const found = open === null ? null : passage(open);
  // A palette's own link opens the day of that palette.
  useEffect(() => {
    if (day !== undefined) date.value = day.slice(0, 10);
  }, [open, day]);
  const isReady = kept.value !== null;
  useLayoutEffect(() => {
    if (isReady) document.querySelector<HTMLElement>('main h1')?.focus();
  }, [open, isReady]);
  if (open === null || isDay(open) || day !== undefined) return <DayView />;
  if (open === 'sheet') return <SheetView />;
  if (open === 'seats' && isReady) return <SeatsView />;
  if (found) return <PassageView key={found.id} passage={found} />;
  return (
    <section class="page">
      <h1 tabIndex={-1}>{sayPalette.heading}</h1>
      <p role="status">{isReady ? sayPalette.passageGone : say.bookOpening}</p>
      {isReady && (
        <p class="main-actions">
          <a class="button main" href={hrefOf('palette')}>
            {sayPalette.toToday}
          </a>
          <a class="button" href={hrefOf('book')}>
            {say.toBook}
          </a>
        </p>
      )}
    </section>
  );
}
