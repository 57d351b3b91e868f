import type { PeriodRow, PeriodVerdict } from '../harmony/period-practice.ts';
/** A row as a sentence: "Blue and green: held to go together, but disputed (…). He held that …". */
export function periodWords({ pair, held, source, note }: PeriodRow): string {
  const both = pair.join(' and ');
  const sentence = `${both.charAt(0).toUpperCase()}${both.slice(1)}: ${VERDICT_WORDS[held]} (${source ?? 'common practice'}).`;
  return note ? `${sentence} ${note}` : sentence;
}

export const VERDICT_WORDS: Record<PeriodVerdict, string> = {
  held: 'held to go together',
  seldom: 'seldom put together',
  'held; disputed': 'held to go together, but disputed',
  'held, single report': 'held to go together in a single report',
};
