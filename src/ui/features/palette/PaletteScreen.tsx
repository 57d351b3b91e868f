import './palette.css';
import { useEffect, useLayoutEffect } from 'preact/hooks';
import { isDay } from '../../../palette/iso-date.ts';
import { dayEntries, passageById, plannedDate } from '../../state/palette/day-entries.ts';
import { hrefOf, route } from '../../state/route.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { DayView } from './DayView.tsx';
import { MorningSheetView } from './MorningSheetView.tsx';
import { PassageView } from './PassageView.tsx';
import { SeatOrderView } from './SeatOrderView.tsx';

/** The Palette place: the day, its morning sheet, the seat order, or one passage. */
export function PaletteScreen() {
  const { open } = route.value;
  const day = dayEntries.value?.palettes.find(({ id }) => id === open)?.body.date;
  const found = open === null ? null : passageById(open);
  // A palette's own link opens the day of that palette.
  useEffect(() => {
    if (day !== undefined) plannedDate.value = day.slice(0, 10);
  }, [open, day]);
  const isReady = dayEntries.value !== null;
  useLayoutEffect(() => {
    if (isReady) document.querySelector<HTMLElement>('main h1')?.focus();
  }, [open, isReady]);
  if (open === null || isDay(open) || day !== undefined) return <DayView />;
  if (open === 'sheet') return <MorningSheetView />;
  if (open === 'seats' && isReady) return <SeatOrderView />;
  if (found) return <PassageView key={found.id} passage={found} />;
  return (
    <section class="page">
      <h1 tabIndex={-1}>{paletteTexts.heading}</h1>
      <p role="status">{isReady ? paletteTexts.passageGone : sharedTexts.bookOpening}</p>
      {isReady && (
        <p class="main-actions">
          <a class="button main" href={hrefOf('palette')}>
            {paletteTexts.toToday}
          </a>
          <a class="button" href={hrefOf('book')}>
            {sharedTexts.toBook}
          </a>
        </p>
      )}
    </section>
  );
}
