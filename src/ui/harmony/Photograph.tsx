import { say } from '../words/frame.ts';
import { Filter } from './sight/Filter.tsx';
import { Surface } from './sight/Surface.tsx';
import { Tools } from './sight/Tools.tsx';
import { chosen, isLit, labels, photoUrl, specimen, studied } from './state.ts';

/** The photograph with its tools, and a switch that highlights the selected colour's region. */
export function Photograph() {
  const url = photoUrl.value;
  const entry = specimen.value;
  const colour = studied.value[chosen.value]?.gathered.name;
  return (
    <div class="sight-side">
      {url !== null && entry && (
        <figure class="photograph">
          <Filter />
          <Surface url={url} {...sizeOf(entry.body.photo)} />
          {colour && labels.value && (
            <figcaption>
              <label class="check">
                <input
                  type="checkbox"
                  checked={isLit}
                  onChange={(event) => {
                    isLit.value = event.currentTarget.checked;
                  }}
                />
                {say.livesWhere(colour)}
              </label>
            </figcaption>
          )}
        </figure>
      )}
      {studied.value.length > 0 && <Tools hasPhotograph={url !== null && entry !== null} />}
    </div>
  );
}

const sizeOf = ({ width, height }: { width: number; height: number }) => ({ width, height });
