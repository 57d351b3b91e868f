import { sayHeld } from '../words/held.ts';

/** Explains what a display can and cannot show of paint. */
export function Screens() {
  return (
    <details>
      <summary>{sayHeld.screens}</summary>
      {sayHeld.about.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </details>
  );
}
