import { paletteFaultWords } from '../../../messages/palette-faults.ts';

import { formatNumber } from '../../state/locale-format.ts';
import { planFaults } from '../../state/palette/plan-job.ts';

/** What prevents the day's plan, one sentence for each fault. */
export function PlanFaults({ heading }: { heading?: string }) {
  const words = [...new Set(planFaults.value.map((one) => paletteFaultWords(one, formatNumber)))];
  if (words.length === 0) return null;
  return (
    <div class="pal-faults" role="alert">
      {heading !== undefined && <h2>{heading}</h2>}
      <ul>
        {words.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}
