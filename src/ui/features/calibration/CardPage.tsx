import { useMemo } from 'preact/hooks';
import { drawCard } from '../../../calibration/card-svg.ts';
import type { SwatchCard } from '../../../calibration/swatch-card.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { nameOfPage } from './swatch-cards.ts';

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
