import { useMemo } from 'preact/hooks';
import type { Card } from '../../pigment/calibrate/card.ts';
import { drawCard } from '../../pigment/calibrate/sheet.ts';
import { saySwatches } from '../words/swatches.ts';
import { nameOfPage } from './cards.ts';

/** A page of swatches as it is printed, at its full size on paper. */
export function Sheet({ card }: { card: Card }) {
  const svg = useMemo(() => drawCard(card), [card]);
  return (
    <div
      class="swatch-sheet"
      data-paper={card.paper}
      role="img"
      aria-label={saySwatches.sheet(nameOfPage(card))}
      // Our own drawing, in which everything that a painter typed is escaped.
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  );
}
