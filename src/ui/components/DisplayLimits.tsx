import { fullScreenTexts } from '../texts/full-screen-texts.ts';

/** Explains what a display can and cannot show of paint. */
export function DisplayLimits() {
  return (
    <details>
      <summary>{fullScreenTexts.screens}</summary>
      {fullScreenTexts.about.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </details>
  );
}
