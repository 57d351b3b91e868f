import type { Entry } from '../../../book/schema/record.ts';
import { hexOf } from '../../../colour/gamut-mapping.ts';
import { layOutClothLine } from '../../../drawing/cloth-line-layout.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { breakLines } from '../../../drawing/label-text.ts';
import { BrushStroke } from '../../components/drawn/BrushStroke.tsx';
import { Hatching, PaintedCloth } from '../../components/drawn/PaintedCloth.tsx';
import { displayLadder } from '../../state/display-ladder.ts';
import { dateWords } from '../../state/locale-format.ts';
import { KIND_WORDS } from '../../texts/book-texts.ts';
import { nameOfCard } from './entry-names.ts';
import type { Group } from './entry-text.ts';

const WIDTH = 794;
const MARGIN = 56;
const ROOM = WIDTH - 2 * MARGIN;
const PATCH = { width: 84, height: 34 } as const;
const TEXT = MARGIN + PATCH.width + 18;
const WALL = '#cdcdcd';

interface Placed {
  readonly y: number;
  readonly size: number;
  readonly bold?: boolean;
  readonly x: number;
  readonly text: string;
}

/**
 * An entry as one SVG page, black on white, with each colour as a painted stroke beside its words.
 * Used for printing and for the SVG export. It depends on no styles or fonts of the page.
 */
export function EntryDrawing({ entry, groups }: { entry: Entry; groups: readonly Group[] }) {
  const { body, kind } = entry;
  const texts: Placed[] = [];
  const strokes: { readonly y: number; readonly hex: string; readonly seed: number }[] = [];
  let y = MARGIN;
  const write = (text: string, size: number, x = MARGIN, bold = false, most = 3) => {
    for (const line of breakLines(text, size, WIDTH - MARGIN - x, most)) {
      y += size * 1.35;
      texts.push({ y, size, x, text: line, bold });
    }
  };
  const date = 'date' in body ? body.date : entry.changed;
  write(nameOfCard({ name: body.name, kind }), 28, MARGIN, true);
  write(`${KIND_WORDS[kind]}, ${dateWords(date)}`, 15);
  y += 18;

  const hung = clothsOf(entry);
  const laid = hung.length > 0 ? layOutClothLine(hung, ROOM) : null;
  const wallTop = y;
  if (laid) y += laid.wall + 22;

  for (const { heading, lines } of groups) {
    if (heading) {
      y += 10;
      write(heading, 17, MARGIN, true);
      y += 8;
    }
    for (const { name, lab, words } of lines) {
      const top = y;
      const x = lab ? TEXT : MARGIN;
      write(name, 15, x, true, 2);
      if (words.length > 0) write(words.join(' · '), 13, x, false, 4);
      if (lab) {
        strokes.push({ y: top + 4, hex: hexOf(lab), seed: seedOf(`${name}${top}`) });
        y = Math.max(y, top + PATCH.height + 6);
      }
      y += 12;
    }
  }
  if (body.note) {
    y += 6;
    for (const line of body.note.split('\n')) write(line, 14, MARGIN, false, 200);
  }
  const height = Math.ceil(y + MARGIN);
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="drawing"
      viewBox={`0 0 ${WIDTH} ${height}`}
      width={WIDTH}
      height={height}
      role="img"
      aria-label={nameOfCard({ name: body.name, kind })}
      font-family="system-ui, 'Noto Sans', 'DejaVu Sans', sans-serif"
      style={{ forcedColorAdjust: 'none' }}
    >
      <rect width={WIDTH} height={height} fill="#ffffff" />
      {laid && (
        <g transform={`translate(${MARGIN} ${wallTop})`}>
          <defs>
            <Hatching id="kingcup-hatch" unit={10} />
          </defs>
          <rect width={ROOM} height={laid.wall} fill={WALL} />
          {laid.places.map((place) => {
            const cloth = hung[place.index]!;
            return (
              <g key={place.index} transform={`translate(${place.left} ${place.top})`}>
                <PaintedCloth
                  hatching="kingcup-hatch"
                  ladder={cloth.ladder}
                  seed={seedOf(cloth.name)}
                  hang={place.how}
                  detail="plain"
                  width={Math.round(place.width)}
                  height={Math.round(place.height)}
                />
              </g>
            );
          })}
        </g>
      )}
      {strokes.map(({ y, hex, seed }) => (
        <BrushStroke key={y} hex={hex} seed={seed} x={MARGIN} y={y} {...PATCH} />
      ))}
      {texts.map(({ x, y, size, text, bold }) => (
        <text
          key={`${x} ${y}`}
          x={x}
          y={y}
          font-size={size}
          font-weight={bold ? 600 : 400}
          fill="#000000"
        >
          {text}
        </text>
      ))}
    </svg>
  );
}

/** The cloths to draw for an entry that has ladders. */
export function clothsOf(entry: Entry) {
  const colours =
    entry.kind === 'harmony'
      ? entry.body.colours
      : entry.kind === 'specimen'
        ? (entry.body.gathered?.colours ?? [])
        : [];
  return colours
    .filter(({ ladder }) => ladder.length > 0)
    .map(({ name, share, accent, ladder }) => ({
      name,
      share,
      accent,
      ladder: displayLadder(ladder),
    }));
}
