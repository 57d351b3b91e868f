import { BrushStroke } from '../../components/drawn/BrushStroke.tsx';

/** Colours brushed side by side. Decorative: the text beside them names them. */
export function ColourStrokes({ hexes }: { hexes: readonly string[] }) {
  const each = 84 / Math.max(1, hexes.length);
  return (
    <svg class="drapery-dab" viewBox="0 0 88 44" aria-hidden="true">
      {hexes.map((hex, i) => (
        <BrushStroke
          key={`${i}${hex}`}
          hex={hex}
          seed={5 + i}
          x={2 + i * each}
          y={3}
          width={each}
          height={38}
          ends={{ left: i === 0, right: i === hexes.length - 1 }}
        />
      ))}
    </svg>
  );
}
