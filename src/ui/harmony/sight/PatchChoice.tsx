import { photographTexts } from '../../words/sight.ts';
import { specimen } from '../state.ts';
import { RadioGroup } from './Choices.tsx';
import { PATCH_SIZES, patchSidePx } from './sizes.ts';
import { patchSize } from './tools.ts';

/** Choice of the size of the averaged patch. */
export function PatchSizeChoice() {
  const photo = specimen.value?.body.photo;
  if (!photo) return null;
  return (
    <div>
      <RadioGroup
        legend={photographTexts.patch}
        name="patch"
        choices={PATCH_SIZES.map((size) => [size, photographTexts.patches[size]] as const)}
        value={patchSize.value}
        onChoose={(size) => {
          patchSize.value = size;
        }}
      />
      <p class="small">{photographTexts.patchSide(patchSidePx(photo, patchSize.value))}</p>
    </div>
  );
}
