import '../../palette/sheet.css';
import { sheetPage } from '../../palette/page.ts';
import { sheetOf } from '../../palette/sheet.ts';
import { sheetBoard } from '../drawn/paper.ts';
import { saidIn } from '../locale.ts';
import { sayPalette } from '../words/palette.ts';
import { dayHref, kept, sheet } from './days.ts';
import { Prepared } from './Prepared.tsx';
import { isPlanning, plan } from './planning.ts';
import { keepSheet } from './preparing.ts';

/** The morning sheet on the screen, printed by the browser. */
export function SheetView() {
  const planned = plan.value;
  const lots = planned?.studio.stock?.entries.map(({ lot }) => lot) ?? [];
  const print = async () => {
    const done = sheet.value?.body;
    if (planned && !done?.prepared) await keepSheet(planned.day, null);
    globalThis.print();
  };
  return (
    <section class="page pal-page pal-sheetpage">
      <div class="pal-notpaper">
        <p class="pal-crumb">
          <a href={dayHref()}>{sayPalette.toDay}</a>
        </p>
        <h1 tabIndex={-1}>{sayPalette.toSheet}</h1>
        <p class="lead">
          {planned
            ? sayPalette.sheetLead
            : isPlanning.value
              ? sayPalette.planning
              : kept.value && sayPalette.noSheet}
        </p>
        {!planned && !isPlanning.value && kept.value && (
          <p class="main-actions">
            <a class="button main" href={dayHref()}>
              {sayPalette.toDay}
            </a>
          </p>
        )}
        {planned && (
          <p class="pal-actions">
            <button type="button" class="main" onClick={() => void print()}>
              {sayPalette.print}
            </button>
            <Prepared />
          </p>
        )}
      </div>
      {planned && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a printed page, scrolled sideways where it is wider than the screen
        <section class="pal-paper" tabIndex={0} aria-label={sayPalette.sheetRegion}>
          {planned.day.palettes.map((palette, at) => {
            const board = sheetBoard(palette, planned.day);
            const { html } = sheetPage(sheetOf(planned.day, at, planned.studio), board);
            return (
              <div
                class="pal-paper-page"
                // A new plan needs a new element: `saidIn` localises its numbers in place, once.
                key={`${at} ${html}`}
                ref={(page) => saidIn(page, lots)}
                dangerouslySetInnerHTML={{ __html: html }}
              />
            );
          })}
        </section>
      )}
    </section>
  );
}
