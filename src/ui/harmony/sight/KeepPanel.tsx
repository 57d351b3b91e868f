import { saySight } from '../../words/sight.ts';
import { ByKeys } from './ByKeys.tsx';
import { Choices } from './Choices.tsx';
import { gatherAnew, isBusy } from './gathered.ts';
import { look } from './look.ts';
import { BRUSH } from './sizes.ts';
import {
  brush,
  closeOutline,
  corners,
  dropCorner,
  keepAll,
  keepTheMiddle,
  keepWay,
  share,
  turnAbout,
} from './tools.ts';

/** Panel for the mask: erase, restore, or keep only the inside of an outline. */
export function KeepPanel() {
  const way = keepWay.value;
  const { mask, behind } = look.value;
  return (
    <>
      <p role="status">
        <strong>{saySight.kept(share.value)}</strong>
        {behind && !isBusy.value && ` ${saySight.behind}`}
      </p>
      {behind && !isBusy.value && (
        <div class="tool-actions">
          <button type="button" onClick={() => void gatherAnew({}, true)}>
            {saySight.follow}
          </button>
        </div>
      )}
      <p>{way === 'outline' ? saySight.outlineAbout : saySight.keepAbout}</p>
      <Choices
        legend={saySight.way}
        name="keep-way"
        choices={[
          ['rub', saySight.rub],
          ['again', saySight.again],
          ['outline', saySight.outline],
        ]}
        value={way}
        onChoose={(value) => {
          keepWay.value = value;
          corners.value = [];
        }}
      />
      {way === 'outline' ? (
        <div class="tool-actions">
          <p role="status">{saySight.corners(corners.value.length)}</p>
          <button type="button" disabled={corners.value.length < 3} onClick={() => closeOutline()}>
            {saySight.close}
          </button>
          <button
            type="button"
            class="quiet"
            disabled={corners.value.length === 0}
            onClick={dropCorner}
          >
            {saySight.lastCorner}
          </button>
        </div>
      ) : (
        <label class="brush">
          {saySight.brush}
          <input
            type="range"
            min={BRUSH.least}
            max={BRUSH.most}
            step={BRUSH.step}
            value={brush.value}
            aria-valuetext={saySight.brushSize(brush.value)}
            onInput={(event) => {
              brush.value = Number(event.currentTarget.value);
            }}
          />
          <span class="small">{saySight.brushSize(brush.value)}</span>
        </label>
      )}
      <ByKeys />
      <div class="tool-actions">
        <button type="button" onClick={keepTheMiddle}>
          {saySight.middle}
        </button>
        <button type="button" disabled={!mask} onClick={turnAbout}>
          {saySight.turnAbout}
        </button>
        <button type="button" disabled={!mask} onClick={keepAll}>
          {saySight.everything}
        </button>
      </div>
    </>
  );
}
