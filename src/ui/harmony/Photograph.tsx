import { useEffect, useRef } from 'preact/hooks';
import { say } from '../words.ts';
import { choose, chosen, isLit, labels, name, photoUrl, studied } from './state.ts';

/** The photograph. Touching it chooses the colour there and dims the rest; touching the same again shows all. */
export function Photograph() {
  const url = photoUrl.value;
  const dim = useRef<HTMLCanvasElement>(null);
  const map = labels.value;
  const index = chosen.value;
  useEffect(() => {
    const canvas = dim.current;
    const context = canvas?.getContext('2d');
    if (!canvas || !context || !map) return;
    canvas.width = map.width;
    canvas.height = map.height;
    const image = context.createImageData(map.width, map.height);
    for (let i = 0; i < map.data.length; i++)
      if (map.data[i] !== index) image.data.set([110, 110, 110, 190], i * 4);
    context.putImageData(image, 0, 0);
  }, [map, index]);
  if (url === null) return null;
  const touch = (event: MouseEvent) => {
    if (!map) return;
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const x = Math.floor(((event.clientX - box.left) / box.width) * map.width);
    const y = Math.floor(((event.clientY - box.top) / box.height) * map.height);
    const label = map.data[y * map.width + x] ?? 255;
    if (label < studied.value.length) choose(label);
  };
  const colour = studied.value[index]?.gathered.name;
  return (
    <figure class="photograph">
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the cloths beside it do the same by keyboard */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a shortcut for touch, not the only way */}
      <div class="photograph-picture" onClick={touch}>
        <img src={url} alt={say.photoOf(name.value || say.unnamed)} />
        <canvas ref={dim} hidden={!map || !isLit.value} />
      </div>
      {colour && map && (
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
  );
}
