import { RadioGroup } from '../../components/RadioGroup.tsx';
import { isGathering, regather } from '../../state/harmony/gather-again.ts';
import { gatheringSettings } from '../../state/harmony/gathering-settings.ts';
import { BRUSH_RADIUS } from '../../state/harmony/patch-sizes.ts';
import {
  brushRadius,
  clearMask,
  closeOutline,
  dropCorner,
  invertMask,
  keptPixelShare,
  maskMode,
  maskToMiddle,
  outlineCorners,
} from '../../state/harmony/photograph-tools.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';
import { FocusMarkerButton } from './FocusMarkerButton.tsx';

/** Panel for the mask: erase, restore, or keep only the inside of an outline. */
export function MaskPanel() {
  const way = maskMode.value;
  const { mask, isOutdated: behind } = gatheringSettings.value;
  return (
    <>
      <p role="status">
        <strong>{photographTexts.kept(keptPixelShare.value)}</strong>
        {behind && !isGathering.value && ` ${photographTexts.behind}`}
      </p>
      {behind && !isGathering.value && (
        <div class="tool-actions">
          <button type="button" onClick={() => void regather({}, true)}>
            {photographTexts.follow}
          </button>
        </div>
      )}
      <p>{way === 'outline' ? photographTexts.outlineAbout : photographTexts.keepAbout}</p>
      <RadioGroup
        legend={photographTexts.way}
        name="keep-way"
        choices={[
          ['rub', photographTexts.rub],
          ['again', photographTexts.again],
          ['outline', photographTexts.outline],
        ]}
        value={way}
        onChoose={(value) => {
          maskMode.value = value;
          outlineCorners.value = [];
        }}
      />
      {way === 'outline' ? (
        <div class="tool-actions">
          <p role="status">{photographTexts.corners(outlineCorners.value.length)}</p>
          <button
            type="button"
            disabled={outlineCorners.value.length < 3}
            onClick={() => closeOutline()}
          >
            {photographTexts.close}
          </button>
          <button
            type="button"
            class="quiet"
            disabled={outlineCorners.value.length === 0}
            onClick={dropCorner}
          >
            {photographTexts.lastCorner}
          </button>
        </div>
      ) : (
        <label class="brush">
          {photographTexts.brush}
          <input
            type="range"
            min={BRUSH_RADIUS.least}
            max={BRUSH_RADIUS.most}
            step={BRUSH_RADIUS.step}
            value={brushRadius.value}
            aria-valuetext={photographTexts.brushSize(brushRadius.value)}
            onInput={(event) => {
              brushRadius.value = Number(event.currentTarget.value);
            }}
          />
          <span class="small">{photographTexts.brushSize(brushRadius.value)}</span>
        </label>
      )}
      <FocusMarkerButton />
      <div class="tool-actions">
        <button type="button" onClick={maskToMiddle}>
          {photographTexts.middle}
        </button>
        <button type="button" disabled={!mask} onClick={invertMask}>
          {photographTexts.turnAbout}
        </button>
        <button type="button" disabled={!mask} onClick={clearMask}>
          {photographTexts.everything}
        </button>
      </div>
    </>
  );
}
