import { EMPTY_MARKUP, type Markup, markup } from '../markup.ts';
import type { NumberFormat } from '../number-format.ts';
import { MIXING_WORDS } from './mixing-steps.ts';
import type { MorningSheet } from './morning-sheet.ts';
import { fitOf } from './page-fit.ts';
import { blanksOf, forWords, GUIDE_WORDS, laidWords, rowWords } from './sheet-phrases.ts';
import type { SheetPile } from './sheet-pile.ts';
import type { Block } from './text-sections.ts';

/** A drawn swatch: unlike a background it is always printed. */
const swatch = (hex: string): Markup =>
  markup`<svg class="swatch" viewBox="0 0 10 13" aria-hidden="true"><rect width="10" height="13" fill="${hex}" stroke="#222" stroke-width=".25"/></svg>`;

/** Keeps a number and its unit on one line; "about" is set smaller. */
const figure = (words: string): Markup => {
  const kept = words.replace(/ (?=g$)/, '\u00a0');
  return kept.startsWith('about ')
    ? markup`<span>about</span> ${kept.slice('about '.length)}`
    : markup`${kept}`;
};

const items = (lines: readonly string[]): Markup =>
  markup`<ul>${lines.map((line) => markup`<li>${line}</li>`)}</ul>`;

const sectionHtml = (name: string, head: string, body: Markup): Markup =>
  markup`<section class="${name}"><h2>${head}</h2>${body}</section>`;

function prepare({ prepare: groups, prepareNotes }: MorningSheet, number: NumberFormat): Markup {
  const oil = groups.some(({ rows }) => rows.some((row) => row.oil !== null));
  const bodies = groups.map(
    ({ tools, rows }) =>
      markup`<tbody><tr><th class="tools" colspan="5" scope="rowgroup">${tools}</th></tr>${rows.map(
        (row, i) =>
          markup`<tr><td class="number">${i > 0 && rows[i - 1]!.number === row.number ? '' : row.number}</td><td class="name"><b>${row.label}</b> ${rowWords(row)}</td><td class="figure">${figure(row.weigh)}</td><td class="figure">${
            row.oil === null ? EMPTY_MARKUP : figure(row.oil)
          }</td><td class="paste">${row.cm3 === null ? '' : number(row.cm3, 0, 2)}</td></tr>`,
      )}</tbody>`,
  );
  const notes = prepareNotes.map((note) => markup`${note} `);
  const table = markup`<table><colgroup><col class="n"><col><col class="weigh"><col class="oil"><col class="paste"></colgroup><thead><tr><th colspan="2"><h2>Prepare, in this order</h2></th><th>weigh</th>${oil ? markup`<th>oil at most</th>` : markup`<td></td>`}<th class="paste">cm³ paste</th></tr></thead>${bodies}</table>`;
  return markup`<section class="prepare">${table}<p class="note">${notes}</p></section>`;
}

function pile(one: SheetPile, number: NumberFormat): Markup {
  const parts = one.parts.map(
    ({ label, parts: count, letDown, cm3 }) =>
      markup`<li><b>${count}</b> ${label}${letDown ? ', let down' : ''}${
        cm3 === null || one.parts.length === 1
          ? EMPTY_MARKUP
          : markup` <span>${number(cm3, 0, 2)}</span>`
      }</li>`,
  );
  const steps = one.steps.map((step) => markup`<p class="step">${step}</p>`);
  const blanks = blanksOf(one).map((word) => markup` <span>${word}<i></i></span>`);
  return markup`<article class="pile">${swatch(one.hex)}<div class="dab"></div><div><h3>${one.mark === '' ? EMPTY_MARKUP : markup`<b>${one.mark}</b>`}<span class="pilename">${one.name}</span> <span class="cm3">${number(one.cm3, 0, 2)} cm³</span></h3><ul class="parts">${parts}</ul>${steps}<p class="laid">${laidWords(one)}${blanks}</p></div></article>`;
}

/** Renders a section of the columns. */
function column({ kind, head, lines }: Block): Markup {
  const said = lines.map(({ runs, mark }) => {
    const words = runs.map(({ bold, plain }) =>
      bold === '' ? markup`${plain} ` : markup`<b>${bold}</b> ${plain} `,
    );
    if (kind !== 'cautions') return markup`<li>${words}</li>`;
    return markup`<p class="${mark ? 'toxic' : 'caution'}">${words}</p>`;
  });
  return sectionHtml(
    `block ${kind}`,
    head,
    kind === 'cautions' ? markup`${said}` : markup`<ul>${said}</ul>`,
  );
}

/** Height over width of a drawing, from its viewBox. */
function ratioOf({ html }: Markup): number {
  const box = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(html);
  return box === null ? 1 : Number(box[2]) / Number(box[1]);
}

/**
 * HTML of one palette's sheet, for print on A4 or Letter; the document has to include sheet.css.
 * @param board the palette as SVG, from {@link drawPalette}
 */
export function sheetPage(sheet: MorningSheet, board: Markup, number: NumberFormat): Markup {
  const first =
    sheet.useFirst.length === 0
      ? EMPTY_MARKUP
      : sectionHtml('first', 'Use first', items(sheet.useFirst));
  const pupils = sheet.pupils
    ? markup`<br><b>Pupils or pregnant people here: nothing toxic.</b>`
    : EMPTY_MARKUP;
  const words = forWords(sheet);
  const { fit, left, right } = fitOf(sheet, ratioOf(board));
  return markup`<section class="sheet" data-fit="${fit}"><header><div><h1>${sheet.title}</h1>${words === '' ? EMPTY_MARKUP : markup`<p>${words}</p>`}</div><p class="when"><b>${sheet.day}</b><br>morning sheet ${sheet.number} of ${sheet.of}${pupils}</p></header>${first}<div class="columns"><div>${prepare(sheet, number)}<section class="piles"><h2>Piles</h2><p class="note">${MIXING_WORDS}${GUIDE_WORDS}</p>${sheet.piles.map((one) => pile(one, number))}</section>${left.map(column)}</div><div><figure>${board}</figure>${right.map(column)}</div></div><footer><div class="always">${sheet.always.map(({ head, words }) => markup`<p><b>${head}.</b> ${words}</p>`)}</div><p class="initials"><span>prepared <i></i></span><span>piles accepted <i></i></span><span>cleaned, rags safe <i></i></span></p></footer></section>`;
}

/** A self-contained document with its own style; it loads nothing. */
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
