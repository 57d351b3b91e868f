import { STATED_LIGHTS } from '../../../photo/neutral.ts';
import { saySight } from '../../words/sight.ts';
import { specimen } from '../state.ts';
import { ByKeys } from './ByKeys.tsx';
import { Choices } from './Choices.tsx';
import { gatherAnew, isBefore, isBusy } from './gathered.ts';
import { type Light, look, statedLight } from './look.ts';
import { PatchChoice } from './PatchChoice.tsx';
import { isCard } from './tools.ts';

/** Panel for the white balance: from a neutral spot, or from a stated light. */
export function LightPanel() {
  const { light } = look.value;
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
            aria-pressed={isBefore.value}
            onClick={() => {
              isBefore.value = !isBefore.value;
            }}
          >
            {saySight.before}
          </button>
          <button
            type="button"
            class="quiet"
            disabled={isBusy.value}
            onClick={() => void gatherAnew({ light: null })}
          >
            {saySight.lightOff}
          </button>
        </div>
      )}
      <p>{saySight.lightAbout}</p>
      <Choices
        legend={saySight.itWas}
        name="spot-was"
        choices={[
          ['white', saySight.whiteOrGrey],
          ['card', saySight.greyCard],
        ]}
        value={isCard.value ? 'card' : 'white'}
        onChoose={(value) => {
          isCard.value = value === 'card';
        }}
      />
      <PatchChoice />
      <ByKeys />
      <fieldset class="tool-actions">
        <legend>{saySight.orLight}</legend>
        {STATED_LIGHTS.map((one) => {
          const isSet = light?.kind === 'stated' && light.light === one;
          return (
            <button
              key={one}
              type="button"
              aria-pressed={isSet}
              disabled={isBusy.value}
              onClick={() => {
                isBefore.value = false;
                void gatherAnew({ light: isSet ? null : statedLight(one) });
              }}
            >
              {saySight.lights[one]}
            </button>
          );
        })}
      </fieldset>
      {light?.kind === 'spot' && <p class="small">{saySight.gains(light.spot.gains)}</p>}
    </>
  );
}

function saidOf(light: Light | null): string {
  if (!light) return saySight.lightNone;
  if (light.kind === 'stated') return saySight.lightStated(saySight.lights[light.light]);
  return light.spot.grey === undefined ? saySight.lightBySpot : saySight.lightByCard;
}
