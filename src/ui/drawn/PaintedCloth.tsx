import { useMemo } from 'preact/hooks';
import { useShapes } from './later.ts';
import { coloursOf, type Garment, type Painted, type Shapes } from './paint.ts';

/**
 * The marks of a hatching for what the shelf does not reach: a dark and a light line together, so
 * that it shows on any colour.
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

/** One garment as a group inside a drawing: its shadow on the wall, its folds, its pegs. */
export function PaintedCloth({ hatching, ...garment }: Garment & { hatching: string }) {
  const { ladder, trim, lining, width, height } = garment;
  const shapes = useShapes(garment);
  // Hundreds of paths: compared only when something of theirs has changed.
  return useMemo(
    () =>
      shapes && (
        <Shaped
          shapes={shapes}
          colour={coloursOf(garment)}
          hatching={hatching}
          peg={Math.min(5, 2 + Math.min(width, height) / 90)}
        />
      ),
    [shapes, ladder, trim, lining, hatching, width, height],
  );
}

function Shaped({
  shapes,
  colour,
  hatching,
  peg,
}: {
  shapes: Shapes;
  colour: Painted['colour'];
  hatching: string;
  peg: number;
}) {
  return (
    <g data-hung>
      <g fill="#000" fill-opacity="0.035">
        {[0.6, 1.3, 2, 2.7, 3.4, 4.2, 5].map((step) => (
          <path
            key={step}
            d={shapes.shadow}
            transform={`translate(${step * 1.3} ${step * 1.6}) scale(0.1)`}
          />
        ))}
      </g>
      <g transform="scale(0.1)">
        {shapes.layers.map((layer, at) => (
          <g key={at}>
            {layer.masses.map((mass) => (
              <path key={mass.place} d={mass.d} fill={colour(layer.part, mass.place)} />
            ))}
            {layer.hatch ? (
              <path d={layer.hatch} fill={`url(#${hatching})`} fill-rule="evenodd" />
            ) : null}
          </g>
        ))}
      </g>
      {shapes.pegs.map(({ x, y }) => (
        <g key={x} transform={`translate(${x} ${y})`}>
          <circle cx={peg * 0.3} cy={peg * 0.4} r={peg} fill="#000" fill-opacity="0.3" />
          <circle r={peg} fill="#757575" />
          <circle r={peg} fill="none" stroke="#454545" stroke-width="0.7" />
          <circle cx={-peg * 0.2} cy={-peg * 0.22} r={peg * 0.5} fill="#949494" />
        </g>
      ))}
    </g>
  );
}
