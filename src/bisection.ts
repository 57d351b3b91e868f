/**
 * Halves an interval at whose lower end a test holds and at whose upper end it fails.
 * @param holds called once a round, with the middle
 * @param rounds halvings at most: the interval then ends 2^rounds times narrower
 * @param isNarrow ends earlier where the interval is narrow enough
 * @returns the ends of the narrowed interval: the last value that held and the first that failed
 */
export function bisect(
  from: number,
  to: number,
  holds: (value: number) => boolean,
  rounds: number,
  isNarrow: (low: number, high: number) => boolean = () => false,
): readonly [low: number, high: number] {
  let [low, high] = [from, to];
  for (let round = 0; round < rounds && !isNarrow(low, high); round++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return [low, high];
}
