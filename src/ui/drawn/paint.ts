import type { Detail, DrawnLadder, Hang } from './drawn.ts';
import { type Hung, hang } from './hang.ts';
import { type Mass, massesOf, unreachedOf } from './mass.ts';
import { borderOf, outline } from './path.ts';
import { toneOf } from './tone.ts';

const FINE = {
  fine: { perStep: 7, slack: 0.15 },
  plain: { perStep: 4, slack: 0.22 },
  small: { perStep: 3, slack: 0.3 },
} as const;

export interface Garment {
  readonly ladder: DrawnLadder;
  readonly seed: number;
  readonly hang?: Hang | undefined;
  readonly trim?: DrawnLadder | undefined;
  readonly lining?: DrawnLadder | undefined;
  readonly detail?: Detail | undefined;
  readonly width: number;
  readonly height: number;
}

/** A garment as flat shapes, back to front, in tenths of a unit. */
export interface Painted {
  readonly pegs: Hung['pegs'];
  /** Everything the cloth covers, for its shadow on the wall. */
  readonly shadow: string;
  readonly layers: readonly { readonly masses: readonly Mass[]; readonly hatch: string }[];
}

const hungBefore = new Map<string, Hung>();

/** Folds depend on seed and size, not on colour: turning a colour must not lay the folds again. */
function hungAs({ seed, hang: how, detail, width, height }: Garment, band: number): Hung {
  const key = [seed, how, detail, width, height, band].join(' ');
  const known = hungBefore.get(key);
  if (known) return known;
  const made = hang(seed, how, detail ?? 'plain', band, { width, height });
  if (hungBefore.size > 40) hungBefore.delete(hungBefore.keys().next().value ?? '');
  hungBefore.set(key, made);
  return made;
}

export function paint(garment: Garment): Painted {
  const { ladder, trim, lining, width, height } = garment;
  const { perStep, slack } = FINE[garment.detail ?? 'plain'];
  const edge = trim ?? lining;
  const hung = hungAs(garment, edge ? Math.min(15, 0.04 * Math.min(width * 1.4, height)) : 0);
  const seen = hung.lengths.flatMap(({ pieces }) => pieces.filter((p) => p.side !== 'wrong'));
  const tone = toneOf(seen, ladder);
  const layers: { masses: Mass[]; hatch: string }[] = [];
  let shadow = '';
  for (const { pieces, band, rim } of hung.lengths) {
    for (const piece of pieces) {
      const wrong = piece.side === 'wrong';
      const own = wrong ? (lining ?? ladder) : ladder;
      const shade = wrong ? (light: number) => Math.min(5, tone(light) + 1) : tone;
      shadow += outline(piece, borderOf(piece, slack * 2));
      layers.push({
        masses: massesOf(piece, own, shade, perStep, slack),
        hatch: unreachedOf(piece, own, shade, slack),
      });
      const over = band.find(({ side, which }) => side === piece.side && which === piece.which);
      if (!over || !edge) continue;
      layers.push({
        masses: massesOf(over, edge, shade, perStep, slack),
        hatch: unreachedOf(over, edge, shade, slack),
      });
    }
    if (!rim || !edge) continue;
    layers.push({
      masses: massesOf(rim, edge, tone, perStep, slack),
      hatch: unreachedOf(rim, edge, tone, slack),
    });
  }
  return { pegs: hung.pegs, shadow, layers };
}
