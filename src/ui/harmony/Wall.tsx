import { useMemo } from 'preact/hooks';
import { ClothLine } from '../drawn/ClothLine.tsx';
import { say } from '../words.ts';
import { drawn } from './drawn.ts';
import { choose, chosen, isKeyed, ladders, studied } from './state.ts';

/** The harmony hung up beside its photograph, keyed to the shelf or as seen. */
export function Wall() {
  const colours = studied.value;
  const steps = ladders.value;
  const cloths = useMemo(
    () =>
      colours.map(({ gathered: { name, share, accent } }, i) => ({
        name,
        share,
        accent,
        ladder: drawn(steps[i]!),
      })),
    [colours, steps],
  );
  return (
    <div class="wall">
      <ClothLine label={say.harmonyHung} cloths={cloths} chosen={chosen.value} onChoose={choose} />
      <fieldset class="choice">
        <legend class="unseen">{say.keyedOrSeen}</legend>
        <Choice keyed={true} text={say.keyed} />
        <Choice keyed={false} text={say.asSeen} />
      </fieldset>
      <p class="small">{isKeyed.value ? say.keyedAbout : say.asSeenAbout}</p>
    </div>
  );
}

function Choice({ keyed, text }: { keyed: boolean; text: string }) {
  return (
    <label>
      <input
        type="radio"
        name="keyed"
        checked={isKeyed.value === keyed}
        onChange={() => {
          isKeyed.value = keyed;
        }}
      />
      <span>{text}</span>
    </label>
  );
}
