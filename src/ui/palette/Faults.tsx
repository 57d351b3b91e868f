import { paletteFaultWords } from '../../palette/faults.ts';
import { said } from '../locale.ts';
import { faults } from './planning.ts';

/** What prevents the day's plan, one sentence for each fault. */
export function Faults({ heading }: { heading?: string }) {
  const words = [...new Set(faults.value.map(paletteFaultWords))];
  if (words.length === 0) return null;
  return (
    <div class="pal-faults" role="alert">
      {heading !== undefined && <h2>{heading}</h2>}
      <ul>
        {words.map((one) => (
          <li key={one}>{said(one)}</li>
        ))}
      </ul>
    </div>
  );
}
