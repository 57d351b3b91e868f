import { escapeHtml, unescapeHtml } from '../escape-html.ts';
import { type CardPlace, MARK_MM, markCentres, PAPER_MM, type SwatchCard } from './swatch-card.ts';

/**
 * Draws a card as SVG to be printed at 100 % (user units are millimetres). The layout is embedded
 * as metadata, so that the file alone suffices to read a photograph of the card: see
 * {@link planOf}.
 */
export function drawCard(card: SwatchCard): string {
  const [width, height] = PAPER_MM[card.paper];
  const pages = card.pages > 1 ? `, page ${card.page} of ${card.pages}` : '';
  const what = card.name
    ? `${card.name}: swatches of your own paints`
    : 'Swatches of your own paints';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" font-family="sans-serif" fill="#000">`,
    `<title>Swatch card${pages}</title>`,
    `<metadata>${escapeHtml(JSON.stringify({ kind: 'kingcup-card', version: 1, card }))}</metadata>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...markCentres(card.paper).map(([x, y], at) => mark(x, y, at === 0)),
    text(27, 13, 4.2, `${what}${pages}`),
    ...INSTRUCTIONS.map((line, at) => text(27, 18 + 3.6 * at, 2.7, line)),
    ...card.places.flatMap(drawPlace),
    ...foot(card, height),
    '</svg>',
    '',
  ].join('\n');
}

const INSTRUCTIONS = [
  'Fill each place to its frame: opaque, even, one thickness. Let it dry. Measure each part level.',
  'In the places named white, grey and black lay or glue the references whose lightness you know.',
  'Photograph the whole page from above in one even daylight: no lamp beside it, no gloss, no shadow',
  'of hand or camera, nothing cut off, all four corner marks in the picture. Print at 100 %, matt.',
];

const text = (x: number, y: number, size: number, words: string, anchor = 'start'): string =>
  `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}">${escapeHtml(words)}</text>`;

function mark(x: number, y: number, different: boolean): string {
  const disc = (r: number, fill: string) => `<circle cx="${x}" cy="${y}" r="${r}" fill="${fill}"/>`;
  return [
    disc(MARK_MM.outer, '#000'),
    disc(MARK_MM.eye, '#fff'),
    ...(different ? [disc(MARK_MM.pupil, '#000')] : []),
  ].join('');
}

function drawPlace({ number, label, measure, x, y, width, height }: CardPlace): string[] {
  const bottom = y + height / 2;
  return [
    `<rect x="${round(x - width / 2)}" y="${round(y - height / 2)}" width="${width}" height="${height}" fill="none" stroke="#999" stroke-width="0.2"/>`,
    ...folded(`${number}  ${label}`).map((line, at) =>
      text(round(x - width / 2), round(bottom + 2.8 + 2.7 * at), 2.5, line),
    ),
    ...(measure === '' ? [] : [text(round(x - width / 2), round(bottom + 8.2), 2.1, measure)]),
  ];
}

const round = (v: number): number => Number(v.toFixed(2));

/** Wraps a label into at most two lines that fit between two places. */
function folded(words: string, most = 27): string[] {
  if (words.length <= most) return [words];
  let at = words.lastIndexOf(' ', most);
  // Do not break before a number: "white 4".
  while (at > 0 && /\d/.test(words[at + 1]!)) at = words.lastIndexOf(' ', at - 1);
  const cut = at > 0 ? at : most;
  return [words.slice(0, cut), words.slice(cut).trim().slice(0, most)];
}

function foot({ cautions }: SwatchCard, height: number): string[] {
  if (cautions.length === 0) return [];
  const lines = [
    'Read the safety data sheet of each paint. No food at the bench; wash your hands; keep the card from children.',
    ...cautions.flatMap((each) => wrapped(each, 125)),
  ];
  // The lines must end above the unprintable margin.
  const step = Math.min(2.6, 18 / lines.length);
  return lines.map((line, at) => text(27, round(height - 22 + at * step), round(0.8 * step), line));
}

function wrapped(words: string, most: number): string[] {
  if (words.length <= most) return [words];
  const at = words.lastIndexOf(' ', most);
  return [words.slice(0, at), ...wrapped(words.slice(at + 1), most)];
}

/** Reads the layout embedded in an SVG by {@link drawCard}; null if missing, invalid or newer. */
export function planOf(svg: string): SwatchCard | null {
  const found = /<metadata>([\s\S]*?)<\/metadata>/.exec(svg)?.[1];
  if (found === undefined) return null;
  try {
    const { kind, version, card } = JSON.parse(unescapeHtml(found)) as Record<string, unknown>;
    return kind === 'kingcup-card' && version === 1 && isCard(card) ? card : null;
  } catch {
    return null;
  }
}

/** Validates a layout from a file that may have been edited. */
function isCard(given: unknown): given is SwatchCard {
  const card = given as SwatchCard;
  const number = (v: unknown) => typeof v === 'number' && Number.isFinite(v);
  return (
    typeof card === 'object' &&
    card !== null &&
    Object.hasOwn(PAPER_MM, card.paper) &&
    typeof card.white === 'string' &&
    ['undefined', 'string'].includes(typeof card.name) &&
    Array.isArray(card.cautions) &&
    Array.isArray(card.places) &&
    card.places.every(
      (place: CardPlace) =>
        [place.number, place.x, place.y, place.width, place.height].every(number) &&
        ['paint', 'white', 'grey', 'black'].includes(place.kind) &&
        typeof place.label === 'string' &&
        Array.isArray(place.parts) &&
        (place.kind === 'paint') === place.parts.length > 0 &&
        place.parts.every((p) => typeof p.pigment === 'string' && number(p.parts) && p.parts > 0),
    )
  );
}
