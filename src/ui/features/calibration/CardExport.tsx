import type { SwatchCard } from '../../../calibration/swatch-card.ts';
import { PrintIcon } from '../../components/drawn/icons.tsx';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { takeFile } from './swatch-cards.ts';

/**
 * Buttons to print or download cards.
 * @param before saves cards that are not saved yet; the cards are printed or downloaded only if it
 *   resolves to true
 */
export function CardExport({
  cards,
  main = false,
  before = async () => true,
}: {
  cards: readonly SwatchCard[];
  main?: boolean;
  before?: () => Promise<boolean>;
}) {
  const printed = async () => {
    if (await before()) globalThis.print();
  };
  const taken = async () => {
    if (!(await before())) return;
    for (const card of cards) await takeFile(card);
  };
  return (
    <>
      <button type="button" class={main ? 'main' : undefined} onClick={() => void printed()}>
        <PrintIcon size={20} />
        {calibrationTexts.print}
      </button>
      <button type="button" onClick={() => void taken()}>
        {calibrationTexts.file}
      </button>
    </>
  );
}
