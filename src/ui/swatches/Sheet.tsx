import { useMemo } from 'preact/hooks';
import type { SwatchCard } from '../../pigment/calibrate/card.ts';
import { drawCard } from '../../pigment/calibrate/sheet.ts';
import { calibrationTexts } from '../words/swatches.ts';
import { nameOfPage } from './cards.ts';

/** A page of swatches at its printed size. */
export function CardPage({ card }: { card: SwatchCard }) {
  const svg = useMemo(() => drawCard(card), [card]);
  return (
    <div
      class="swatch-sheet"
      data-paper={card.paper}
      role="img"
      aria-label={calibrationTexts.sheet(nameOfPage(card))}
      // This SVG comes from our own code, which escapes all text from the painter.
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  );
}
