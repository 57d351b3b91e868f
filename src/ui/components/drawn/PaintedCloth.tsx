import { Fragment } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import type { GarmentDrawingInput } from '../../../drawing/painted-garment.ts';
import { isGamutMapped } from '../../state/screen-colour.ts';
import { useScheduledDrawing } from './draw-queue.ts';
import { GamutMark } from './GamutMark.tsx';
import { Peg } from './Peg.tsx';
import { clothShapeCache, paintGarment } from './painted-garment-cache.ts';

/**
 * Hatching pattern for colours out of reach: pairs of a dark and a light line, visible on any
 * colour.
 */
export function Hatching({ id, unit = 1 }: { id: string; unit?: number }) {
  const gap = 5.5 * unit;
  return (
    <pattern
      id={id}
      width={gap}
      height={gap}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(-52)"
    >
      <path
        d={`M0 ${unit * 1.5}H${gap}`}
        stroke="#000"
        stroke-opacity="0.42"
        stroke-width={unit * 0.7}
      />
      <path
        d={`M0 ${unit * 2.2}H${gap}`}
        stroke="#fff"
        stroke-opacity="0.42"
        stroke-width={unit * 0.7}
      />
    </pattern>
  );
}

/** One garment as a group inside a drawing: its shadow on the wall, its folds and its pegs. */
export function PaintedCloth({ hatching, ...given }: GarmentDrawingInput & { hatching: string }) {
  const { ladder, trim, lining, seed, hang, detail, width, height } = given;
  const garment = useMemo(
    () => ({ ladder, trim, lining, seed, hang, detail, width, height }),
    [ladder, trim, lining, seed, hang, detail, width, height],
  );
  const place = useRef<SVGGElement>(null);
  const drawn = useScheduledDrawing(garment, clothShapeCache, place);
  // Reuse unchanged nodes: selecting one of many cloths must not redraw them all.
  const nodes = useMemo(() => drawn && painted(drawn, hatching), [drawn, hatching]);
  return <g ref={place}>{nodes}</g>;
}

function painted(garment: GarmentDrawingInput, hatching: string) {
  const { shadow, layers, pegs, colour } = paintGarment(garment);
  const peg = Math.min(5, 2 + Math.min(garment.width, garment.height) / 90);
  return (
    <g data-hung>
      <g fill="#000" fill-opacity="0.035">
        {[0.6, 1.3, 2, 2.7, 3.4, 4.2, 5].map((step) => (
          <path
            key={step}
            d={shadow}
            transform={`translate(${step * 1.3} ${step * 1.6}) scale(0.1)`}
          />
        ))}
      </g>
      <g transform="scale(0.1)">
        {layers.map((layer, at) => (
          <Fragment key={at}>
            {layer.masses.map((mass) => (
              <path key={mass.place} d={mass.d} fill={colour(layer.part, mass.place)} />
            ))}
            {layer.hatch ? (
              <path d={layer.hatch} fill={`url(#${hatching})`} fill-rule="evenodd" />
            ) : null}
          </Fragment>
        ))}
      </g>
      {pegs.map(({ x, y }) => (
        <Peg key={x} x={x} y={y} radius={peg} />
      ))}
      {garment.ladder.some(({ hex }) => isGamutMapped(hex)) ? (
        <GamutMark x={(pegs.at(-1)?.x ?? garment.width) + peg + 12} y={2} />
      ) : null}
    </g>
  );
}
