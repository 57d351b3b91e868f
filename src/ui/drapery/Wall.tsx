import { describe } from '../../colour/words.ts';
import type { ClothWish } from '../../drapery/fold.ts';
import { STEPS } from '../../harmony/harmony.ts';
import { ClothLine, type LineCloth } from '../drawn/ClothLine.tsx';
import type { DrawnLadder } from '../drawn/drawn.ts';
import { shownOf } from '../drawn/screen.ts';
import { say } from '../words/drapery.ts';
import { shareWords } from '../words/frame.ts';
import { answered } from './cloths.ts';
import { picking } from './picking.ts';
import { drawnOf } from './spoken.ts';
import { chosen, scheme, type Worn } from './state.ts';

/** A cloth without a result hangs flat in its local colour. */
const flat = ({ lab }: ClothWish): DrawnLadder =>
  STEPS.map((step) => ({ step, share: 0, reachable: true, hex: shownOf(lab) }));

const ladderOf = (wish: ClothWish): DrawnLadder => {
  const cloth = answered(wish);
  return cloth?.ok ? drawnOf(cloth.value) : flat(wish);
};

/** All garments hung together, and their description in words. */
export function Wall() {
  const { garments } = scheme.value;
  const all = garments.reduce((sum, { share }) => sum + share, 0) || 1;
  const cloths = garments.map(
    ({ wish, share }): LineCloth => ({
      name: wish.name,
      share: share / all,
      ladder: ladderOf(wish),
      ...(wish.trim ? { trim: ladderOf(wish.trim) } : {}),
      ...(wish.lining ? { lining: ladderOf(wish.lining) } : {}),
    }),
  );
  return (
    <div class="drapery-wall">
      <ClothLine
        label={say.wall}
        cloths={cloths}
        chosen={chosen.value}
        onChoose={(at) => {
          chosen.value = at;
          picking.value = null;
        }}
      />
      <p class="drapery-seen">{garments.map((worn) => seen(worn, worn.share / all)).join(' ')}</p>
    </div>
  );
}

const colourOf = (wish: ClothWish) => {
  const cloth = answered(wish);
  return describe(cloth?.ok ? cloth.value.folds[2]!.lab : wish.lab);
};

/** For example "Blue-grey (60 % of the wall): wool, dark, dull blue; edged with satin, …." */
function seen({ wish }: Worn, share: number): string {
  const { name, stuff, trim, lining } = wish;
  const parts = [
    `${stuff}, ${colourOf(wish)}`,
    ...(lining ? [`lined with ${lining.stuff}, ${colourOf(lining)}`] : []),
    ...(trim ? [`edged with ${trim.stuff}, ${colourOf(trim)}`] : []),
  ];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${share < 1 ? ` (${shareWords(share)} of the wall)` : ''}: ${parts.join('; ')}.`;
}
