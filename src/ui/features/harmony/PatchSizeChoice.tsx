import { RadioGroup } from '../../components/RadioGroup.tsx';
import { specimen } from '../../state/harmony/current-harmony.ts';
import { PATCH_SIZES, patchSidePx } from '../../state/harmony/patch-sizes.ts';
import { patchSize } from '../../state/harmony/photograph-tools.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';

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
