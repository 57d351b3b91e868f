import { saySight } from '../../words/sight.ts';
import { specimen } from '../state.ts';
import { Choices } from './Choices.tsx';
import { PATCH_SIZES, sideOn } from './sizes.ts';
import { patch } from './tools.ts';

/** Choice of the size of the averaged patch. */
export function PatchChoice() {
  const photo = specimen.value?.body.photo;
  if (!photo) return null;
  return (
    <div>
      <Choices
        legend={saySight.patch}
        name="patch"
        choices={PATCH_SIZES.map((size) => [size, saySight.patches[size]] as const)}
        value={patch.value}
        onChoose={(size) => {
          patch.value = size;
        }}
      />
      <p class="small">{saySight.patchSide(sideOn(photo, patch.value))}</p>
    </div>
  );
}
