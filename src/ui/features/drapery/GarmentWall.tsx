import { describeColour } from '../../../colour/describe-colour.ts';
import type { ClothRequest } from '../../../drapery/cloth-types.ts';
import type { DrawnLadder } from '../../../drawing/drawn-ladder.ts';
import { LADDER_STEPS } from '../../../harmony/harmony.ts';
import { ClothLine, type LineCloth } from '../../components/drawn/ClothLine.tsx';
import { clothResultOf } from '../../state/drapery/cloth-results.ts';
import { drawnLadderOf } from '../../state/drapery/cloth-text.ts';
import { type SchemeGarment, scheme, selectedGarment } from '../../state/drapery/drapery-scheme.ts';
import { colourTarget } from '../../state/drapery/part-selection.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { shareWords } from '../../texts/shared-texts.ts';

/** A cloth without a result hangs flat in its local colour. */
const flat = ({ lab }: ClothRequest): DrawnLadder =>
  LADDER_STEPS.map((step) => ({ step, share: 0, reachable: true, hex: cssColourOf(lab) }));

const ladderOf = (wish: ClothRequest): DrawnLadder => {
  const cloth = clothResultOf(wish);
  return cloth?.ok ? drawnLadderOf(cloth.value) : flat(wish);
};

/** All garments hung together, and their description in words. */
export function GarmentWall() {
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
        label={draperyTexts.wall}
        cloths={cloths}
        chosen={selectedGarment.value}
        onChoose={(at) => {
          selectedGarment.value = at;
          colourTarget.value = null;
        }}
      />
      <p class="drapery-seen">{garments.map((worn) => seen(worn, worn.share / all)).join(' ')}</p>
    </div>
  );
}

const colourOf = (wish: ClothRequest) => {
  const cloth = clothResultOf(wish);
  return describeColour(cloth?.ok ? cloth.value.folds[2]!.lab : wish.lab);
};

/** For example "Blue-grey (60 % of the wall): wool, dark, dull blue; edged with satin, …." */
function seen({ wish }: SchemeGarment, share: number): string {
  const { name, stuff, trim, lining } = wish;
  const parts = [
    `${stuff}, ${colourOf(wish)}`,
    ...(lining ? [`lined with ${lining.stuff}, ${colourOf(lining)}`] : []),
    ...(trim ? [`edged with ${trim.stuff}, ${colourOf(trim)}`] : []),
  ];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${share < 1 ? ` (${shareWords(share)} of the wall)` : ''}: ${parts.join('; ')}.`;
}
