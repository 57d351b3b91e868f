import fc from 'fast-check';

/**
 * Numbers from `min` to `max`, evenly spread; one in eight as `fc.double` draws them. That draws among
 * all doubles there are: of a range that holds 0 nine in ten lie nearer to 0 than a hundredth of its width.
 */
export const evenly = (min: number, max: number): fc.Arbitrary<number> => {
  const steps = 2 ** 30;
  return fc.oneof(
    {
      weight: 7,
      arbitrary: fc.nat(steps).map((step) => min + ((max - min) * step) / steps),
    },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );
};
