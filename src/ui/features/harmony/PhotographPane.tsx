import {
  harmonyColours,
  isRegionHighlighted,
  photoUrl,
  regionLabels,
  selectedIndex,
  specimen,
} from '../../state/harmony/current-harmony.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { PhotographSurface } from './PhotographSurface.tsx';
import { PhotographTools } from './PhotographTools.tsx';
import { WhiteBalanceFilter } from './WhiteBalanceFilter.tsx';

/** The photograph with its tools, and a switch that highlights the selected colour's region. */
export function PhotographPane() {
  const url = photoUrl.value;
  const entry = specimen.value;
  const colour = harmonyColours.value[selectedIndex.value]?.gathered.name;
  return (
    <div class="sight-side">
      {url !== null && entry && (
        <figure class="photograph">
          <WhiteBalanceFilter />
          <PhotographSurface url={url} {...sizeOf(entry.body.photo)} />
          {colour && regionLabels.value && (
            <figcaption>
              <label class="check">
                <input
                  type="checkbox"
                  checked={isRegionHighlighted}
                  onChange={(event) => {
                    isRegionHighlighted.value = event.currentTarget.checked;
                  }}
                />
                {sharedTexts.livesWhere(colour)}
              </label>
            </figcaption>
          )}
        </figure>
      )}
      {harmonyColours.value.length > 0 && (
        <PhotographTools hasPhotograph={url !== null && entry !== null} />
      )}
    </div>
  );
}

const sizeOf = ({ width, height }: { width: number; height: number }) => ({ width, height });
