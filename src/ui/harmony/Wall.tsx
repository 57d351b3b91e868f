import { batch } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { ClothLine } from '../drawn/ClothLine.tsx';
import { isWide } from '../drawn/screen.ts';
import { say } from '../words/frame.ts';
import { mixSay } from '../words/mixing.ts';
import { drawn } from './drawn.ts';
import { Transposed } from './mix/Transposed.tsx';
import { isTransposed, transposeAll, untranspose } from './mix/transposing.ts';
import { choose, chosen, gatheredLabs, isKeyed, ladders, studied } from './state.ts';

/** The harmony as hung cloths: mapped into the shelf's range, as seen, or moved within reach. */
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
    [colours, steps, isWide.value],
  );
  return (
    <div class="wall">
      <ClothLine label={say.harmonyHung} cloths={cloths} chosen={chosen.value} onChoose={choose} />
      <fieldset class="choice">
        <legend class="unseen">{say.keyedOrSeen}</legend>
        <Choice
          text={say.keyed}
          checked={!isTransposed.value && isKeyed.value}
          onChoose={() => showAs(true)}
        />
        <Choice
          text={say.asSeen}
          checked={!isTransposed.value && !isKeyed.value}
          onChoose={() => showAs(false)}
        />
        <Choice
          text={mixSay.transposed}
          checked={isTransposed.value}
          onChoose={() => void transposeAll(gatheredLabs.value)}
        />
      </fieldset>
      <p class="small">
        {isTransposed.value
          ? mixSay.transposedAbout
          : isKeyed.value
            ? say.keyedAbout
            : say.asSeenAbout}
      </p>
      <Transposed />
    </div>
  );
}

const showAs = (keyed: boolean) =>
  batch(() => {
    untranspose();
    isKeyed.value = keyed;
  });

function Choice({
  text,
  checked,
  onChoose,
}: {
  text: string;
  checked: boolean;
  onChoose: () => void;
}) {
  return (
    <label>
      <input type="radio" name="keyed" checked={checked} onChange={onChoose} />
      <span>{text}</span>
    </label>
  );
}
