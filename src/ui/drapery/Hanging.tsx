import type { Garment } from '../../drapery/fold.ts';
import { HangingCloth } from '../drawn/Cloth.tsx';
import { seedOf } from '../drawn/seed.ts';
import { draperyTexts } from '../words/drapery.ts';
import { drawnLadderOf } from './spoken.ts';
import type { SchemeGarment } from './state.ts';

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
