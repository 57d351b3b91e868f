import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Point } from '../../../calibration/homography.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { Crosshair } from './Crosshair.tsx';
import { PhotoOutlines } from './PhotoOutlines.tsx';

/** One point to mark. */
interface Turn {
  /** The instruction, such as "Touch place 3: yellow ochre, alone." */
  readonly words: string;
  /** Label drawn at the point once it is set. */
  readonly mark: string;
  /** The point may be skipped when it is not in the picture. */
  readonly mayMiss?: boolean;
}

/**
 * Lets the painter mark a series of points on a photograph, by finger or keys. Skipped points are
 * null; coordinates are fractions of width and height.
 */
export function PointMarker({
  url,
  alt,
  turns,
  onDone,
  onLeave,
}: {
  url: string;
  alt: string;
  turns: readonly Turn[];
  onDone: (points: readonly (Point | null)[]) => void;
  onLeave?: () => void;
}) {
  const points = useSignal<readonly (Point | null)[]>([]);
  const at = useSignal<Point>([0.5, 0.5]);
  const size = useSignal<Point>([1, 1]);
  const next = turns[points.value.length];
  useEffect(() => {
    const image = new Image();
    image.onload = () => {
      size.value = [image.naturalWidth, image.naturalHeight];
    };
    image.src = url;
  }, [url]);
  const set = (point: Point | null) => {
    if (points.value.length >= turns.length) return;
    points.value = [...points.value, point];
    if (points.value.length === turns.length) onDone(points.value);
  };
  const [width, height] = size.value;
  const reach = Math.max(width, height) / 100;
  const outlines = points.value.flatMap((point, i) => {
    if (!point) return [];
    const [u, v] = [reach / width, reach / height];
    const [x, y] = point;
    const corners: Point[] = [
      [x - u, y - v],
      [x + u, y - v],
      [x + u, y + v],
      [x - u, y + v],
    ];
    return [{ words: turns[i]!.mark, corners }];
  });
  return (
    <div class="swatch-touching">
      <div class="swatch-turn">
        <div role="status">
          <p class="lead">{next?.words}</p>
          <p class="small">
            {calibrationTexts.turnOf(Math.min(points.value.length + 1, turns.length), turns.length)}
          </p>
        </div>
      </div>
      <Crosshair url={url} alt={alt} at={at} onSet={set} id="swatch-touch">
        <PhotoOutlines outlines={outlines} width={width} height={height} />
      </Crosshair>
      <p class="swatch-few">
        <button
          type="button"
          class="quiet"
          onClick={() => document.getElementById('swatch-touch')?.focus()}
        >
          {calibrationTexts.byKeys}
        </button>
        {next?.mayMiss && (
          <button type="button" class="quiet" onClick={() => set(null)}>
            {calibrationTexts.skip}
          </button>
        )}
        {points.value.length > 0 && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              points.value = points.value.slice(0, -1);
            }}
          >
            {calibrationTexts.stepBack}
          </button>
        )}
        {onLeave && (
          <button type="button" class="quiet" onClick={onLeave}>
            {calibrationTexts.giveUp}
          </button>
        )}
      </p>
    </div>
  );
}
