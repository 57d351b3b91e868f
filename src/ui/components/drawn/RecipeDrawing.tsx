import { useId } from 'preact/hooks';
import { drawingRandom, randomBetween, seedOf } from '../../../drawing/drawing-seed.ts';
import { layOutRecipe, RECIPE_FONT_PX, type RecipePile } from '../../../drawing/recipe-layout.ts';
import { joinWords } from '../../../wording.ts';
import { useWidth } from '../element-width.ts';
import { nameWithGamutNote, partsWords } from './alternative-text.ts';
import { PaintedHeap } from './PaintedHeap.tsx';

interface PileRowProps {
  readonly piles: readonly RecipePile[];
  /** The mixture. */
  readonly mixed: { readonly name: string; readonly hex: string };
  /** Width in px; default: measured from the page. */
  readonly width?: number | undefined;
  readonly class?: string | undefined;
}

/**
 * Streaks of the knife that gathers the pigments: three of each pigment, as broad as its share,
 * which run together into the pile.
 *
 * @returns path data, and the index of the pile
 */
function pullsOf(
  to: { readonly x: number; readonly y: number; readonly radius: number },
  piles: readonly RecipePile[],
): { readonly d: string; readonly of: number }[] {
  const all = piles.reduce((sum, { parts }) => sum + Math.max(0, parts), 0) || 1;
  const next = drawingRandom(seedOf(piles.map(({ name }) => name).join()));
  const streaks = piles
    .flatMap(({ parts }, of) =>
      Array.from({ length: 3 }, () => ({ of, broad: parts / all / 3, at: next() })),
    )
    .sort((a, b) => a.at - b.at);
  const tall = to.radius * 0.8;
  const right = to.x - to.radius * 0.2;
  const sag = to.radius * 0.14;
  const point = (px: number, py: number) => `${px.toFixed(1)} ${py.toFixed(1)}`;
  let y = to.y - tall * 0.3;
  return streaks.map(({ of, broad }) => {
    const high = Math.max(1.2, tall * broad);
    const left = to.x - to.radius * randomBetween(next, 1.55, 2);
    const middle = (left + right) / 2;
    // Each streak overlaps the next a little, and tapers to a point where the blade was set down.
    const d =
      `M${point(left, y + high / 2 + sag)}` +
      `C${point(left + 6, y + sag - 0.6)} ${point(middle, y + sag * 0.8 - 0.6)} ${point(right, y - 0.6)}` +
      `V${(y + high + 0.6).toFixed(1)}` +
      `C${point(middle, y + high + sag * 0.8 + 0.6)} ${point(left + 6, y + high + sag + 0.6)} ${point(left, y + high / 2 + sag)}Z`;
    y += tall * broad;
    return { d, of };
  });
}

/** A recipe as a drawing: the piles of its pigments, the pull of the knife, and the mixed pile. */
export function RecipeDrawing(props: PileRowProps) {
  const id = useId();
  const measured = useWidth<HTMLDivElement>(640);
  const width = Math.max(220, props.width ?? measured.width);
  const { piles, mixed } = props;
  const laid = layOutRecipe(piles, width, (pile) => partsWords(pile.parts));
  const words = piles.map(
    (pile) => `${partsWords(pile.parts)} ${nameWithGamutNote(pile.name, pile.hex)}`,
  );
  const smear = laid.mixed;
  return (
    <div ref={measured.ref} class={props.class} style={{ width: '100%' }}>
      <svg
        viewBox={`0 0 ${laid.width} ${laid.height}`}
        role="img"
        aria-labelledby={`${id}-title`}
        style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
      >
        <title
          id={`${id}-title`}
        >{`${nameWithGamutNote(mixed.name, mixed.hex)}: ${joinWords(words)}, mixed into one pile`}</title>
        <defs>
          {piles.map((pile, k) => (
            <linearGradient
              key={pile.name}
              id={`${id}-pull${k}`}
              gradientUnits="userSpaceOnUse"
              x1={smear.x - smear.radius * 2}
              x2={smear.x - smear.radius * 0.4}
              y1="0"
              y2="0"
            >
              <stop offset="0.1" stop-color={pile.hex} />
              <stop offset="1" stop-color={mixed.hex} />
            </linearGradient>
          ))}
        </defs>
        {pullsOf(smear, piles).map((pull) => (
          <path key={pull.d} d={pull.d} fill={`url(#${id}-pull${pull.of})`} />
        ))}
        <g transform={`translate(${smear.x} ${smear.y})`}>
          <PaintedHeap hex={mixed.hex} seed={seedOf(mixed.name)} radius={smear.radius} />
        </g>
        {laid.piles.map((place, k) => {
          const pile = piles[k];
          if (!pile) return null;
          return (
            <g key={pile.name}>
              <g transform={`translate(${place.x} ${place.y})`}>
                <PaintedHeap hex={pile.hex} seed={seedOf(pile.name)} radius={place.radius} />
              </g>
              {place.lines.map((line, n) => (
                <text
                  key={line}
                  x={place.words.x}
                  y={place.words.y + n * 16}
                  text-anchor="middle"
                  fill="var(--ink, #1c1c1c)"
                  style={{ fontSize: `${RECIPE_FONT_PX}px`, fontWeight: n === 0 ? '600' : '400' }}
                >
                  {line}
                </text>
              ))}
            </g>
          );
        })}
        <text
          x={smear.x}
          y={smear.y + smear.radius + 22}
          text-anchor="middle"
          fill="var(--ink, #1c1c1c)"
          style={{ fontSize: `${RECIPE_FONT_PX}px`, fontWeight: '600' }}
        >
          {mixed.name}
        </text>
      </svg>
    </div>
  );
}
