import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { isUnbalancedShown } from '../../state/harmony/gather-again.ts';
import { gatheringSettings } from '../../state/harmony/gathering-settings.ts';
import { patchSidePx } from '../../state/harmony/patch-sizes.ts';
import { markerPosition, patchSize } from '../../state/harmony/photograph-tools.ts';

/** Side of the canvas, px; the style sheet displays it at half, for dense screens. */
const CANVAS_SIDE = 224;
/** The loupe shows this many patch sides; the patch fills a third of it. */
const PATCHES_ACROSS = 3;

/**
 * Magnifier beside the pointer, with an outline of the patch that is averaged.
 * @param width, height of the stored photograph, px
 */
export function Loupe({
  picture,
  width,
  height,
}: {
  picture: RefObject<HTMLImageElement | null>;
  width: number;
  height: number;
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [x, y] = markerPosition.value;
  const side = patchSidePx({ width, height }, patchSize.value);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    const image = picture.current;
    if (!context || !image?.complete) return;
    const seen = side * PATCHES_ACROSS;
    context.imageSmoothingEnabled = false;
    context.fillStyle = '#808080';
    context.fillRect(0, 0, CANVAS_SIDE, CANVAS_SIDE);
    context.drawImage(
      image,
      x * width - seen / 2,
      y * height - seen / 2,
      seen,
      seen,
      0,
      0,
      CANVAS_SIDE,
      CANVAS_SIDE,
    );
    const [from, edge] = [
      CANVAS_SIDE / 2 - CANVAS_SIDE / PATCHES_ACROSS / 2,
      CANVAS_SIDE / PATCHES_ACROSS,
    ];
    for (const [line, colour] of [
      [7, '#fff'],
      [3, '#111'],
    ] as const) {
      context.lineWidth = line;
      context.strokeStyle = colour;
      context.strokeRect(from, from, edge, edge);
    }
  }, [x, y, side, width, height, picture]);
  return (
    <canvas
      ref={canvas}
      class={
        gatheringSettings.value.light && !isUnbalancedShown.value ? 'loupe set-right' : 'loupe'
      }
      width={CANVAS_SIDE}
      height={CANVAS_SIDE}
      data-below={y < 0.45 ? '' : undefined}
      style={{
        left: `clamp(0px, calc(${(x * 100).toFixed(2)}% - 56px), calc(100% - 112px))`,
        top: `calc(${(y * 100).toFixed(2)}% + ${y < 0.45 ? 36 : -148}px)`,
      }}
    />
  );
}
