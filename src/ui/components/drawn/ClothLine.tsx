import { useId } from 'preact/hooks';
import { layOutClothLine, NAME_SIZE } from '../../../drawing/cloth-line-layout.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { joinWords } from '../../../wording.ts';
import { useWidth } from '../element-width.ts';
import { gamutWords, outOfReachWords } from './alternative-text.ts';
import { Hatching, PaintedCloth } from './PaintedCloth.tsx';

export interface LineCloth {
  /** Shown below the cloth, and the text of its button. */
  readonly name: string;
  readonly ladder: DrawnLadder;
  /** Share of the harmony, 0…1. */
  readonly share: number;
  /** If true, the cloth is a ribbon over the others. */
  readonly accent?: boolean | undefined;
  /** Colours of a band along its edge, and of its wrong side. */
  readonly trim?: DrawnLadder | undefined;
  readonly lining?: DrawnLadder | undefined;
  /** Determines the folds; default: from its name. */
  readonly seed?: number | undefined;
}

interface ClothLineProps {
  /** What is hung up: the start of the text alternative. */
  readonly label: string;
  readonly cloths: readonly LineCloth[];
  /** Index of the selected cloth. */
  readonly chosen?: number | undefined;
  /** If absent, the cloths are not buttons. */
  readonly onChoose?: ((index: number) => void) | undefined;
  /** Width in px; default: measured from the page. */
  readonly width?: number | undefined;
  readonly class?: string | undefined;
}

const percent = (share: number) =>
  share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;

/**
 * A harmony as a line of overlapping cloths, each as wide as its share, with accents as ribbons.
 */
export function ClothLine(props: ClothLineProps) {
  const id = useId();
  const measured = useWidth<HTMLDivElement>(640);
  const width = Math.max(200, props.width ?? measured.width);
  const laid = layOutClothLine(props.cloths, width);
  const words = props.cloths.map((cloth) =>
    [
      `${cloth.name} ${percent(cloth.share)}`,
      cloth.accent ? '(accent)' : '',
      outOfReachWords(cloth.ladder),
      gamutWords(cloth.ladder),
    ]
      .filter(Boolean)
      .join(' '),
  );
  return (
    <div
      ref={measured.ref}
      class={props.class}
      style={{ position: 'relative', width: props.width ? `${props.width}px` : '100%' }}
    >
      <svg
        viewBox={`0 0 ${width} ${laid.wall}`}
        role="img"
        aria-labelledby={`${id}-title`}
        style={{ display: 'block', width: '100%', height: 'auto', forcedColorAdjust: 'none' }}
      >
        <title id={`${id}-title`}>
          {`${props.label}: ${props.cloths.length === 0 ? 'nothing hung yet' : `cloths hung side by side, ${joinWords(words)}`}`}
        </title>
        <defs>
          <Hatching id={`${id}-hatch`} unit={10} />
        </defs>
        <rect width={width} height={laid.wall} fill="var(--wall)" />
        {laid.places.map((place) => {
          const cloth = props.cloths[place.index];
          if (!cloth) return null;
          return (
            <g key={place.index} transform={`translate(${place.left} ${place.top})`}>
              <PaintedCloth
                hatching={`${id}-hatch`}
                ladder={cloth.ladder}
                trim={cloth.trim}
                lining={cloth.lining}
                seed={cloth.seed ?? seedOf(cloth.name)}
                hang={place.how}
                detail={place.width > 190 ? 'plain' : 'small'}
                width={Math.round(place.width)}
                height={Math.round(place.height)}
              />
            </g>
          );
        })}
      </svg>
      <div style={{ position: 'relative', height: `${laid.height - laid.wall}px` }} />
      {laid.places.map((place) => {
        const cloth = props.cloths[place.index];
        if (!cloth) return null;
        const chosen = place.index === props.chosen;
        const { box } = place.label;
        const name = (
          <span
            style={{
              position: 'absolute',
              left: `${box.left - place.press.left}px`,
              top: `${box.top + 2}px`,
              width: `${box.right - box.left}px`,
              boxSizing: 'border-box',
              overflow: 'hidden',
              textOverflow: 'ellipsis',
              whiteSpace: 'nowrap',
              textAlign: 'center',
              fontSize: `${NAME_SIZE}px`,
              lineHeight: '18px',
              color: 'var(--ink, #1c1c1c)',
              borderRadius: '3px',
              border: chosen ? '2px solid var(--ink, #1c1c1c)' : '2px solid transparent',
            }}
          >
            {cloth.name}
          </span>
        );
        const seat = {
          position: 'absolute',
          left: `${place.press.left}px`,
          top: '0',
          width: `${place.press.width}px`,
          height: `${laid.wall}px`,
          padding: '0',
          border: '0',
          background: 'none',
          font: 'inherit',
        } as const;
        return props.onChoose ? (
          <button
            key={place.index}
            type="button"
            aria-pressed={chosen}
            onClick={() => props.onChoose?.(place.index)}
            style={{ ...seat, cursor: 'pointer' }}
          >
            {name}
          </button>
        ) : (
          <div key={place.index} style={{ ...seat, pointerEvents: 'none' }}>
            {name}
          </div>
        );
      })}
    </div>
  );
}
