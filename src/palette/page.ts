import { fitOf } from './fit.ts';
import { type Markup, markup, NOTHING } from './markup.ts';
import type { MorningSheet, SheetPile } from './sheet.ts';

/** A swatch drawn, not painted as a background: it prints when backgrounds are off. */
const swatch = (hex: string): Markup =>
  markup`<svg class="swatch" viewBox="0 0 10 10" aria-hidden="true"><rect width="10" height="10" fill="${hex}" stroke="#222" stroke-width=".25"/></svg>`;

const items = (lines: readonly string[]): Markup =>
  markup`<ul>${lines.map((line) => markup`<li>${line}</li>`)}</ul>`;

const part = (name: string, head: string, body: Markup): Markup =>
  markup`<section class="${name}"><h2>${head}</h2>${body}</section>`;

function prepare(sheet: MorningSheet): Markup {
  const groups = sheet.prepare.map(
    ({ tools, rows }) =>
      markup`<tbody><tr><th class="tools" colspan="3" scope="rowgroup">${tools}</th></tr>${rows.map(
        (row, i) => {
          const again = i > 0 && rows[i - 1]!.number === row.number;
          const detail = [row.act, row.lot].filter((words) => words !== '').join(' · ');
          return markup`<tr><td class="number">${again ? '' : row.number}</td><td><b>${row.label}</b><span class="lot">${detail}</span></td><td class="measure"><b>${row.measure}</b>${
            row.cm3 === null ? NOTHING : markup`<span class="lot">${row.cm3} cm³ paste</span>`
          }</td></tr>`;
        },
      )}</tbody>`,
  );
  const notes = sheet.prepareNotes.map((note) => markup`<p class="note">${note}</p>`);
  return part('prepare', 'Prepare, in this order', markup`<table>${groups}</table>${notes}`);
}

function pile(one: SheetPile): Markup {
  const parts = one.parts.map(
    ({ label, parts: count, letDown, cm3 }) =>
      markup`<li><b>${count}</b> ${label}${letDown ? ', let down' : ''}${
        cm3 === null || one.parts.length === 1
          ? NOTHING
          : markup` <span class="cm3">${cm3} cm³</span>`
      }</li>`,
  );
  const steps = [...one.steps, ...(one.instead === null ? [] : [one.instead])];
  return markup`<article class="pile">${swatch(one.hex)}<div class="dab"><span>dab, date</span></div><div class="words"><h3>${one.name} <span class="cm3">${one.cm3} cm³</span></h3><p class="laid">${one.passage}: ${one.laid}</p><ul class="parts">${parts}</ul>${steps.map((step) => markup`<p class="step">${step}</p>`)}${
    one.lots === '' ? NOTHING : markup`<p class="lots">${one.lots}</p>`
  }</div></article>`;
}

function foot(sheet: MorningSheet): Markup {
  const today = [...sheet.today, ...sheet.lacks];
  const acknowledge = sheet.acknowledge.map(
    ({ lot, person, date }) =>
      markup`<li>${person}, ${lot}: ${date === null ? markup`<span class="blank"></span>` : `read ${date}`}</li>`,
  );
  const cautions = sheet.cautions.map(
    ({ names, words, toxic }) =>
      markup`<p class="${toxic ? 'toxic' : 'caution'}"><b>${toxic ? 'Toxic: ' : ''}${names}.</b> ${words}</p>`,
  );
  return markup`<div class="foot"><div>${
    today.length === 0 ? NOTHING : part('today', 'Today', items(today))
  }${sheet.mind.length === 0 ? NOTHING : part('mind', 'Mind', items(sheet.mind))}${part('cleaning', 'At the end of the day', items(sheet.cleaning))}</div><div>${
    cautions.length === 0 ? NOTHING : part('cautions', 'Cautions', markup`${cautions}`)
  }${
    acknowledge.length === 0
      ? NOTHING
      : part('read', 'Read and understood, each lot', markup`<ul>${acknowledge}</ul>`)
  }</div></div>`;
}

/**
 * One palette's page, to be printed on A4 or Letter: in any document that has the style of sheet.css.
 * @param board the palette as SVG, from {@link drawPalette}
 */
export function sheetPage(sheet: MorningSheet, board: Markup): Markup {
  const first =
    sheet.useFirst.length === 0 ? NOTHING : part('first', 'Use first', items(sheet.useFirst));
  return markup`<section class="sheet" data-fit="${fitOf(sheet)}"><header><h1>${sheet.title}</h1><p><b>${sheet.day}</b><br>morning sheet ${sheet.number} of ${sheet.of}${sheet.pupils ? ' · nothing toxic: pupils or pregnant people here' : ''}</p></header>${first}<div class="head">${prepare(sheet)}<figure>${board}<figcaption>Colours are a guide, not for matching.</figcaption></figure></div><section class="piles"><h2>Piles <span>the printed square is a guide, not for matching; dab the accepted pile beside it, with date and lots</span></h2><div>${sheet.piles.map(pile)}</div></section>${foot(sheet)}<footer><div class="always">${sheet.always.map(({ head, words }) => markup`<p><b>${head}.</b> ${words}</p>`)}</div><p class="initials"><span>prepared <i></i></span><span>piles accepted <i></i></span><span>cleaned, rags safe <i></i></span></p></footer></section>`;
}

/** A whole document with its own style: nothing in it asks for anything outside. */
export function sheetDocument(pages: readonly Markup[], title: string, style: string): string {
  const { html } = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<style>${{ html: style.replaceAll('</', '<\\/') }}</style>
</head>
<body>
${pages}
</body>
</html>
`;
  return html;
}
