import { NAMED_LIGHTS } from '../../../photo/white-balance.ts';
import { RadioGroup } from '../../components/RadioGroup.tsx';
import { specimen } from '../../state/harmony/current-harmony.ts';
import { isGathering, isUnbalancedShown, regather } from '../../state/harmony/gather-again.ts';
import {
  type AppliedWhiteBalance,
  gatheringSettings,
  whiteBalanceFromStated,
} from '../../state/harmony/gathering-settings.ts';
import { isGreyCard } from '../../state/harmony/photograph-tools.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';
import { FocusMarkerButton } from './FocusMarkerButton.tsx';
import { PatchSizeChoice } from './PatchSizeChoice.tsx';

/** Panel for the white balance: from a neutral spot, or from a stated light. */
export function WhiteBalancePanel() {
  const { light } = gatheringSettings.value;
  if (!specimen.value) return null;
  return (
    <>
      <p role="status">
        <strong>{saidOf(light)}</strong>
      </p>
      {light && (
        <div class="tool-actions">
          <button
            type="button"
            aria-pressed={isUnbalancedShown.value}
            onClick={() => {
              isUnbalancedShown.value = !isUnbalancedShown.value;
            }}
          >
            {photographTexts.before}
          </button>
          <button
            type="button"
            class="quiet"
            disabled={isGathering.value}
            onClick={() => void regather({ light: null })}
          >
            {photographTexts.lightOff}
          </button>
        </div>
      )}
      <p>{photographTexts.lightAbout}</p>
      <RadioGroup
        legend={photographTexts.itWas}
        name="spot-was"
        choices={[
          ['white', photographTexts.whiteOrGrey],
          ['card', photographTexts.greyCard],
        ]}
        value={isGreyCard.value ? 'card' : 'white'}
        onChoose={(value) => {
          isGreyCard.value = value === 'card';
        }}
      />
      <PatchSizeChoice />
      <FocusMarkerButton />
      <fieldset class="tool-actions">
        <legend>{photographTexts.orLight}</legend>
        {NAMED_LIGHTS.map((one) => {
          const isSet = light?.kind === 'stated' && light.light === one;
          return (
            <button
              key={one}
              type="button"
              aria-pressed={isSet}
              disabled={isGathering.value}
              onClick={() => {
                isUnbalancedShown.value = false;
                void regather({ light: isSet ? null : whiteBalanceFromStated(one) });
              }}
            >
              {photographTexts.lights[one]}
            </button>
          );
        })}
      </fieldset>
      {light?.kind === 'spot' && <p class="small">{photographTexts.gains(light.spot.gains)}</p>}
    </>
  );
}

function saidOf(light: AppliedWhiteBalance | null): string {
  if (!light) return photographTexts.lightNone;
  if (light.kind === 'stated')
    return photographTexts.lightStated(photographTexts.lights[light.light]);
  return light.spot.grey === undefined ? photographTexts.lightBySpot : photographTexts.lightByCard;
}
