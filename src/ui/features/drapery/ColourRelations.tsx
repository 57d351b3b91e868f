import type { Cloth, ClothRequest } from '../../../drapery/cloth-types.ts';
import { type Related, relationsOf } from '../../../harmony/roles-and-intervals.ts';
import {
  intervalWords,
  periodWords,
  roleWords,
  temperatureWords,
} from '../../../messages/relation-messages.ts';
import { clothResultOf } from '../../state/drapery/cloth-results.ts';
import { scheme } from '../../state/drapery/drapery-scheme.ts';
import { formatNumber as decimals } from '../../state/locale-format.ts';
import { draperyTexts, PART_NAMES } from '../../texts/drapery-texts.ts';

/** Assumed visible share of a garment's trim and of its lining. */
const TRIM = 0.05;
const LINING = 0.08;

/** The computed cloths of the scheme, as colours with shares. */
function related(): Related[] {
  return scheme.value.garments.flatMap(({ wish, share }) => {
    const one = (cloth: ClothRequest | undefined, name: string, part: number, accent: boolean) => {
      const answer = cloth && clothResultOf(cloth);
      if (!cloth || !answer?.ok) return [];
      return [
        {
          name,
          share: share * part,
          lab: localOf(answer.value),
          ...(accent ? { accent } : {}),
          ...(cloth.declared ? { declared: cloth.declared } : {}),
        },
      ];
    };
    const name = small(wish.name);
    return [
      ...one(wish, name, 1, false),
      ...one(wish.lining, `${small(PART_NAMES.lining)} of the ${name}`, LINING, false),
      ...one(wish.trim, `${small(PART_NAMES.trim)} of the ${name}`, TRIM, true),
    ];
  });
}

const localOf = ({ folds }: Cloth) => folds[2]!.lab;
const small = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
const figure = (score: number): string => decimals(score, 2).replace('-', '−');

/** The relations between the garments' colours, in words. */
export function SchemeRelations() {
  const colours = related();
  if (colours.length < 2) return null;
  return (
    <section class="drapery-relations" aria-labelledby="relations-heading">
      <h2 id="relations-heading">{draperyTexts.relations}</h2>
      <ColourRelations colours={colours} />
    </section>
  );
}

/**
 * Relations between at least two colours, in words. For information only: nothing is chosen by
 * them.
 */
export function ColourRelations({ colours }: { colours: readonly Related[] }) {
  const total = colours.reduce((sum, { share }) => sum + share, 0) || 1;
  const all = colours.map((colour) => ({ ...colour, share: colour.share / total }));
  const relations = relationsOf(all);
  const { temperature, pairs, meanScore } = relations;
  return (
    <>
      <p>
        {roleWords(relations, all)} {draperyTexts.temperature(temperatureWords(temperature))}
      </p>
      {pairs.map((pair) => {
        const { of, beside, period, score } = pair;
        const { lightness, chroma, hue } = intervalWords(pair, all);
        return (
          <details key={`${of} ${beside}`} open={pairs.length === 1}>
            <summary>{draperyTexts.pair(all[of]!.name, all[beside]!.name)}</summary>
            <ul class="drapery-remarks mix-points">
              <li>{[lightness, chroma, hue].map(sentence).join(' ')}</li>
              {period.length === 0 ? (
                <li>{draperyTexts.periodSilent}</li>
              ) : (
                period.map((row) => <li key={row.pair.join()}>{periodWords(row)}</li>)
              )}
              <li class="small">{draperyTexts.score(figure(score.score))}</li>
            </ul>
          </details>
        );
      })}
      {meanScore !== null && pairs.length > 1 && (
        <p class="small">{draperyTexts.meanScore(figure(meanScore))}</p>
      )}
    </>
  );
}
