import { useMemo } from 'preact/hooks';
import { isFollowed } from '../../../harmony/limit.ts';
import { FoldRow } from '../../drawn/FoldRow.tsx';
import { isWide } from '../../drawn/screen.ts';
import { AMOUNT_WORDS, WAY_WORDS } from '../../words/frame.ts';
import { varySay } from '../../words/vary.ts';
import { drawn, moved } from '../drawn.ts';
import { WorkLine } from '../mix/WorkLine.tsx';
import { ladders, studied, takeVariants, targets } from '../state.ts';
import { hatched, marksOf, shifted } from './folds.ts';
import { ChangeWords } from './Trial.tsx';
import { leaveWhole, variedWhole, wholeAsk, wholeVarying } from './varied.ts';

/** Preview of one variant for the whole harmony: folds before and after, changes in words. */
export function Whole() {
  const ask = wholeAsk.value;
  const made = variedWhole.value;
  const colours = studied.value;
  const steps = ladders.value;
  const labs = targets.value;
  const before = useMemo(
    () =>
      colours.map(({ gathered: { name } }, i) => ({
        id: name,
        name,
        ladder: drawn(steps[i]!),
        reachable: true,
      })),
    [colours, steps, isWide.value],
  );
  const after = useMemo(
    () =>
      (made ?? []).map((one, i) => {
        const { name } = colours[i]!.gathered;
        return {
          id: name,
          name,
          ladder: hatched(drawn(moved(steps[i]!, labs[i]!, shifted(labs[i]!, one))), one),
          reachable: one.granted !== 'nothing',
          ...marksOf(one),
        };
      }),
    [made, colours, steps, labs, isWide.value],
  );
  if (!ask) return null;
  const words = varySay.variant(WAY_WORDS[ask.way], AMOUNT_WORDS[ask.amount]);
  const whole = made?.filter((one) => one.granted === 'whole' || isFollowed(one)).length ?? 0;
  const some = made?.some(({ granted }) => granted !== 'nothing') ?? false;
  return (
    <section class="trial" aria-labelledby="whole-heading">
      <h3 id="whole-heading">{varySay.wholeHeading(words)}</h3>
      <WorkLine work={wholeVarying} words={varySay.wholeWorking} />
      {made && (
        <>
          <FoldRow label={varySay.wholeBefore} folds={before} seed={3} />
          <FoldRow label={varySay.wholeHeading(words)} folds={after} seed={3} />
          <p role="status">{varySay.wholeMet(whole, some, colours.length)}</p>
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
                  takeVariants(
                    made.flatMap((one, at) =>
                      one.granted === 'nothing' ? [] : [{ at, made: one }],
                    ),
                  );
                  leaveWhole();
                }}
              >
                {varySay.takeWhole}
              </button>
            )}
            <button type="button" class="quiet" onClick={leaveWhole}>
              {varySay.leaveWhole}
            </button>
          </p>
        </>
      )}
    </section>
  );
}
