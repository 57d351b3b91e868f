import type { Garment } from '../../drapery/fold.ts';
import { Cloth } from '../drawn/Cloth.tsx';
import { seedOf } from '../drawn/seed.ts';
import { say } from '../words/drapery.ts';
import { drawnOf } from './spoken.ts';
import type { Worn } from './state.ts';

/** One garment drawn large, with its lining and trim. */
export function Hanging({ worn, garment }: { worn: Worn; garment: Garment | null }) {
  const { name } = worn.wish;
  if (!garment) return <p class="small">{say.notDrawn}</p>;
  return (
    <Cloth
      name={`${name}, ${garment.stuff}`}
      ladder={drawnOf(garment)}
      trim={garment.trim ? drawnOf(garment.trim) : undefined}
      lining={garment.lining ? drawnOf(garment.lining) : undefined}
      seed={seedOf(name)}
      detail="fine"
    />
  );
}
