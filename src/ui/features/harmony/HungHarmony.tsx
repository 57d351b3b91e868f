import { batch } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { ClothLine } from '../../components/drawn/ClothLine.tsx';
import { displayLadder } from '../../state/display-ladder.ts';
import {
  gatheredLabs,
  harmonyColours,
  isMappedToShelf,
  ladders,
  selectColour,
  selectedIndex,
} from '../../state/harmony/current-harmony.ts';
import {
  cancelMove,
  isWithinReachShown,
  moveWithinReach,
} from '../../state/harmony/move-within-reach.ts';
import { isWideGamut } from '../../state/screen-colour.ts';
import { mixtureTexts } from '../../texts/mixture-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { MovedWithinReach } from './MovedWithinReach.tsx';

/** The harmony as hung cloths: mapped into the shelf's range, as seen, or moved within reach. */
export function HungHarmony() {
  const colours = harmonyColours.value;
  const steps = ladders.value;
  const cloths = useMemo(
    () =>
      colours.map(({ gathered: { name, share, accent } }, i) => ({
        name,
        share,
        accent,
        ladder: displayLadder(steps[i]!),
      })),
    [colours, steps, isWideGamut.value],
  );
  return (
    <div class="wall">
      <ClothLine
        label={sharedTexts.harmonyHung}
        cloths={cloths}
        chosen={selectedIndex.value}
        onChoose={selectColour}
      />
      <fieldset class="choice">
        <legend class="unseen">{sharedTexts.keyedOrSeen}</legend>
        <Choice
          text={sharedTexts.keyed}
          checked={!isWithinReachShown.value && isMappedToShelf.value}
          onChoose={() => showAs(true)}
        />
        <Choice
          text={sharedTexts.asSeen}
          checked={!isWithinReachShown.value && !isMappedToShelf.value}
          onChoose={() => showAs(false)}
        />
        <Choice
          text={mixtureTexts.transposed}
          checked={isWithinReachShown.value}
          onChoose={() => void moveWithinReach(gatheredLabs.value)}
        />
      </fieldset>
      <p class="small">
        {isWithinReachShown.value
          ? mixtureTexts.transposedAbout
          : isMappedToShelf.value
            ? sharedTexts.keyedAbout
            : sharedTexts.asSeenAbout}
      </p>
      <MovedWithinReach />
    </div>
  );
}

const showAs = (keyed: boolean) =>
  batch(() => {
    cancelMove();
    isMappedToShelf.value = keyed;
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
