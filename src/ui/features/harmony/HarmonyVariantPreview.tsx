import { useMemo } from 'preact/hooks';
import { isChromaOnly } from '../../../messages/variant-limits.ts';
import { FoldRow } from '../../components/drawn/FoldRow.tsx';
import { JobProgress } from '../../components/JobProgress.tsx';
import { displayLadder, shiftLadder } from '../../state/display-ladder.ts';
import {
  applyVariants,
  harmonyColours,
  ladders,
  targets,
} from '../../state/harmony/current-harmony.ts';
import {
  closeHarmonyPreview,
  harmonyVariantJob,
  harmonyVariantRequest,
  mixedHarmonyVariant,
} from '../../state/harmony/variant-jobs.ts';
import { isWideGamut } from '../../state/screen-colour.ts';
import { VARIANT_AMOUNT_WORDS, VARIANT_WAY_WORDS } from '../../texts/shared-texts.ts';
import { variantTexts } from '../../texts/variant-texts.ts';
import { ChangeWords } from './VariantPreview.tsx';
import { foldMarks, hatchPartial, shiftWithMixture } from './variant-folds.ts';

/** Preview of one variant for the whole harmony: folds before and after, changes in words. */
export function HarmonyVariantPreview() {
  const ask = harmonyVariantRequest.value;
  const made = mixedHarmonyVariant.value;
  const colours = harmonyColours.value;
  const steps = ladders.value;
  const labs = targets.value;
  const before = useMemo(
    () =>
      colours.map(({ gathered: { name } }, i) => ({
        id: name,
        name,
        ladder: displayLadder(steps[i]!),
        reachable: true,
      })),
    [colours, steps, isWideGamut.value],
  );
  const after = useMemo(
    () =>
      (made ?? []).map((one, i) => {
        const { name } = colours[i]!.gathered;
        return {
          id: name,
          name,
          ladder: hatchPartial(
            displayLadder(shiftLadder(steps[i]!, labs[i]!, shiftWithMixture(labs[i]!, one))),
            one,
          ),
          reachable: one.granted !== 'nothing',
          ...foldMarks(one),
        };
      }),
    [made, colours, steps, labs, isWideGamut.value],
  );
  if (!ask) return null;
  const words = variantTexts.variant(VARIANT_WAY_WORDS[ask.way], VARIANT_AMOUNT_WORDS[ask.amount]);
  const whole = made?.filter((one) => one.granted === 'whole' || isChromaOnly(one)).length ?? 0;
  const some = made?.some(({ granted }) => granted !== 'nothing') ?? false;
  return (
    <section class="variant-preview" aria-labelledby="whole-heading">
      <h3 id="whole-heading">{variantTexts.wholeHeading(words)}</h3>
      <JobProgress work={harmonyVariantJob} words={variantTexts.wholeWorking} />
      {made && (
        <>
          <FoldRow label={variantTexts.wholeBefore} folds={before} seed={3} />
          <FoldRow label={variantTexts.wholeHeading(words)} folds={after} seed={3} />
          <p role="status">{variantTexts.wholeMet(whole, some, colours.length)}</p>
          <ul class="vary-list">
            {made.map((one, i) => (
              <li key={colours[i]!.gathered.name}>
                <strong>{colours[i]!.gathered.name}</strong>
                <ChangeWords made={one} />
              </li>
            ))}
          </ul>
          <p class="mix-buttons">
            {some && (
              <button
                type="button"
                class="main"
                onClick={() => {
                  applyVariants(
                    made.flatMap((one, at) =>
                      one.granted === 'nothing' ? [] : [{ at, made: one }],
                    ),
                  );
                  closeHarmonyPreview();
                }}
              >
                {variantTexts.takeWhole}
              </button>
            )}
            <button type="button" class="quiet" onClick={closeHarmonyPreview}>
              {variantTexts.leaveWhole}
            </button>
          </p>
        </>
      )}
    </section>
  );
}
