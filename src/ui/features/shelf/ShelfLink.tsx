import './shelf.css';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { masstonesOf } from '../../../pigment/nearest-masstone.ts';
import { BrushStroke } from '../../components/drawn/BrushStroke.tsx';
import { hrefOf } from '../../state/route.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { shelf } from '../../state/studio.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';

const MOST = 24;
const STROKE = { width: 26, height: 72, gap: 7 } as const;

/**
 * Link from the book to the shelf, with the shelf's masstones brushed out side by side, light to
 * dark.
 */
export function ShelfLink() {
  const shown = masstonesOf(shelf.value)
    .toSorted((p, q) => q.lab[0] - p.lab[0])
    .slice(0, MOST);
  const step = STROKE.width + STROKE.gap;
  return (
    <a class="shelf-link" href={hrefOf('book', 'shelf')}>
      <svg
        viewBox={`0 0 ${shown.length * step} ${STROKE.height}`}
        style={{ maxWidth: `${shown.length * step}px` }}
        aria-hidden="true"
      >
        {shown.map(({ pigment, lab }, i) => (
          // A downward stroke is a stroke rotated by 90 degrees.
          <g key={pigment} transform={`translate(${i * step + STROKE.width} 0) rotate(90)`}>
            <BrushStroke
              hex={cssColourOf(lab)}
              seed={seedOf(pigment)}
              x={0}
              y={0}
              width={STROKE.height}
              height={STROKE.width}
            />
          </g>
        ))}
      </svg>
      <span class="shelf-open">{shelfTexts.open}</span>
      <span class="small">{shelfTexts.about}</span>
    </a>
  );
}
