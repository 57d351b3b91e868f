import { useId } from 'preact/hooks';
import { blend } from './blend.ts';
import { PaintedHeap } from './PaintedHeap.tsx';
import { layRecipe, type RecipePile, WORD } from './recipe.ts';
import { listed, partsWords } from './say.ts';
import { seedOf } from './seed.ts';
import { useWidth } from './width.ts';

export interface PileRowProps {
  readonly piles: readonly RecipePile[];
  /** What they make. */
  readonly mixed: { readonly name: string; readonly hex: string };
  /** px; measured from the page unless told. */
  readonly width?: number | undefined;
  readonly class?: string | undefined;
}

/** A recipe: the piles of its pigments, a pull of the knife, and what they make. */
export function PileRow(props: PileRowProps) {
  const id = useId();
  const measured = useWidth<HTMLDivElement>(640);
  const width = Math.max(220, props.width ?? measured.width);
  const { piles, mixed } = props;
  const laid = layRecipe(piles, width, (pile) => partsWords(pile.parts));
  const words = piles.map((pile) => `${partsWords(pile.parts)} ${pile.name}`);
  const smear = laid.mixed;
  return (
    <div ref={measured.ref} class={props.class} style={{ width: '100%' }}>
      <svg
        viewBox={`0 0 ${laid.width} ${laid.height}`}
        role="img"
        aria-labelledby={`${id}-title`}
        style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
      >
        <title id={`${id}-title`}>{`${mixed.name}: ${listed(words)}, mixed into one pile`}</title>
        <path
          d={`M${smear.x - smear.radius * 1.5} ${smear.y + smear.radius * 0.5}Q${smear.x - smear.radius * 0.6} ${smear.y + smear.radius * 0.7} ${smear.x} ${smear.y + smear.radius * 0.35}L${smear.x} ${smear.y - smear.radius * 0.2}Q${smear.x - smear.radius * 0.8} ${smear.y - smear.radius * 0.1} ${smear.x - smear.radius * 1.35} ${smear.y + smear.radius * 0.1}Z`}
          fill={blend(mixed.hex, '#000000', 0.04)}
        />
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
                  style={{ fontSize: `${WORD}px`, fontWeight: n === 0 ? '600' : '400' }}
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
          style={{ fontSize: `${WORD}px`, fontWeight: '600' }}
        >
          {mixed.name}
        </text>
      </svg>
    </div>
  );
}
