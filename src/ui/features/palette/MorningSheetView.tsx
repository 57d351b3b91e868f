import '../../../sheet/sheet.css';
import { sheetPaletteMarkup } from '../../../drawing/palette-markup.ts';
import { sheetOf } from '../../../sheet/morning-sheet.ts';
import { sheetPage } from '../../../sheet/page-html.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { dayEntries, dayHref, daySheet } from '../../state/palette/day-entries.ts';
import { dayPlan, isPlanning } from '../../state/palette/plan-job.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { PreparedButton } from './PreparedButton.tsx';
import { saveSheet } from './prepare-day.ts';

/** The morning sheet on the screen, printed by the browser. */
export function MorningSheetView() {
  const planned = dayPlan.value;
  const print = async () => {
    const done = daySheet.value?.body;
    if (planned && !done?.prepared) await saveSheet(planned.day, null);
    globalThis.print();
  };
  return (
    <section class="page pal-page pal-sheetpage">
      <div class="pal-notpaper">
        <p class="pal-crumb">
          <a href={dayHref()}>{paletteTexts.toDay}</a>
        </p>
        <h1 tabIndex={-1}>{paletteTexts.toSheet}</h1>
        <p class="lead">
          {planned
            ? paletteTexts.sheetLead
            : isPlanning.value
              ? paletteTexts.planning
              : dayEntries.value && paletteTexts.noSheet}
        </p>
        {!planned && !isPlanning.value && dayEntries.value && (
          <p class="main-actions">
            <a class="button main" href={dayHref()}>
              {paletteTexts.toDay}
            </a>
          </p>
        )}
        {planned && (
          <p class="pal-actions">
            <button type="button" class="main" onClick={() => void print()}>
              {paletteTexts.print}
            </button>
            <PreparedButton />
          </p>
        )}
      </div>
      {planned && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a printed page, scrolled sideways where it is wider than the screen
        <section class="pal-paper" tabIndex={0} aria-label={paletteTexts.sheetRegion}>
          {planned.day.palettes.map((palette, at) => {
            const board = sheetPaletteMarkup(palette, planned.day);
            const sheet = sheetOf(planned.day, at, planned.studio, formatNumber);
            const { html } = sheetPage(sheet, board, formatNumber);
            return (
              <div
                class="pal-paper-page"
                key={`${at} ${html}`}
                dangerouslySetInnerHTML={{ __html: html }}
              />
            );
          })}
        </section>
      )}
    </section>
  );
}
