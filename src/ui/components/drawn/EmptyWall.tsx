import { Peg } from './Peg.tsx';

const PEGS = [46, 118, 204, 262, 330] as const;

/** An empty wall with pegs and dotted outlines of cloths, for an empty state. */
export function EmptyWall() {
  return (
    <svg class="bare" viewBox="0 0 380 150" aria-hidden="true">
      {PEGS.slice(0, -1).map((x, at) => {
        const to = PEGS[at + 1] ?? x;
        const deep = 34 + 0.62 * (to - x);
        return (
          <path
            key={x}
            d={`M${x} 26Q${(x + to) / 2} ${26 + deep} ${to} 26`}
            fill="none"
            stroke="var(--line)"
            stroke-opacity="0.55"
            stroke-width="1.2"
            stroke-dasharray="2 5"
            stroke-linecap="round"
          />
        );
      })}
      {PEGS.map((x) => (
        <Peg key={x} x={x} y={24} radius={4.5} />
      ))}
    </svg>
  );
}
