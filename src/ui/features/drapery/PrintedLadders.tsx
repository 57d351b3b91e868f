import { hexOf } from '../../../colour/gamut-mapping.ts';
import type { Cloth } from '../../../drapery/cloth-types.ts';
import { clothRemarkWords } from '../../../messages/drapery-messages.ts';
import { garments } from '../../state/drapery/cloth-results.ts';
import { foldWords } from '../../state/drapery/cloth-text.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { ColourStrokes } from './ColourStrokes.tsx';
import { BlackRuleText } from './LadderSteps.tsx';

/** Print version: every cloth's ladder, expanded. */
export function PrintedLadders() {
  const whole = garments.value.filter((one) => one !== null);
  return (
    <div class="drapery-printed">
      {whole.flatMap((garment) => [
        <Sheet key={garment.name} name={garment.name} cloth={garment} />,
        ...(garment.lining
          ? [
              <Sheet
                key={`${garment.name} lining`}
                name={draperyTexts.partOf('Lining', garment.name)}
                cloth={garment.lining}
              />,
            ]
          : []),
        ...(garment.trim
          ? [
              <Sheet
                key={`${garment.name} trim`}
                name={draperyTexts.partOf('Trim', garment.name)}
                cloth={garment.trim}
              />,
            ]
          : []),
      ])}
    </div>
  );
}

function Sheet({ name, cloth }: { name: string; cloth: Cloth }) {
  return (
    <section class="drapery-sheet">
      <h2>
        {name}: {cloth.stuff}, {cloth.way}
      </h2>
      <ol class="drapery-steps">
        {[...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])].map((fold) => (
          <li key={fold.step} class="drapery-line">
            <ColourStrokes hexes={[hexOf(fold.lab)]} />
            <span class="drapery-step">
              <strong>{fold.step}</strong>
              <span>{foldWords(fold)}</span>
            </span>
          </li>
        ))}
      </ol>
      <BlackRuleText cloth={cloth} />
      {cloth.remarks.map(clothRemarkWords).map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
    </section>
  );
}
