import type { Garment } from '../../../drapery/cloth-types.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { HangingCloth } from '../../components/drawn/HangingCloth.tsx';
import { drawnLadderOf } from '../../state/drapery/cloth-text.ts';
import type { SchemeGarment } from '../../state/drapery/drapery-scheme.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';

/** One garment drawn large, with its lining and trim. */
export function GarmentDrawing({
  worn,
  garment,
}: {
  worn: SchemeGarment;
  garment: Garment | null;
}) {
  const { name } = worn.wish;
  if (!garment) return <p class="small">{draperyTexts.notDrawn}</p>;
  return (
    <HangingCloth
      name={`${name}, ${garment.stuff}`}
      ladder={drawnLadderOf(garment)}
      trim={garment.trim ? drawnLadderOf(garment.trim) : undefined}
      lining={garment.lining ? drawnLadderOf(garment.lining) : undefined}
      seed={seedOf(name)}
      detail="fine"
    />
  );
}
