import { sayHeld } from '../words/held.ts';

/** What a screen can and cannot say about paint. */
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
