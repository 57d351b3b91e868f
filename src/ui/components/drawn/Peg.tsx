/** A peg in the wall, lit from the upper left as in every drawing. Sizes in drawing units. */
export function Peg({ x, y, radius }: { x: number; y: number; radius: number }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle cx={radius * 0.3} cy={radius * 0.4} r={radius} fill="#000" fill-opacity="0.3" />
      <circle r={radius} fill="#757575" />
      <circle r={radius} fill="none" stroke="#454545" stroke-width="0.7" />
      <circle cx={-radius * 0.2} cy={-radius * 0.22} r={radius * 0.5} fill="#949494" />
    </g>
  );
}
