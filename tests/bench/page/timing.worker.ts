export interface TimingJob {
  readonly file: Blob;
  readonly rounds: number;
  /** Without the warm-up or without the second thread, to measure what each of them gains. */
  readonly without?: 'warm-up' | 'second thread' | undefined;
}

/** Milliseconds, one value a round, decode and whole taken in turn so that both meet the same machine. */
export interface Timing {
  readonly decode: number[];
  readonly whole: number[];
  /** The first photograph. */
  firstMs: number;
}

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<TimingJob>) => void) | null;
  postMessage(message: Timing): void;
};

/** Once memory that is given back after a photograph was told is given back: else the next one would pay for it. */
const settled = () => new Promise((resolve) => setTimeout(resolve));

scope.onmessage = async ({ data: { file, rounds, without } }) => {
  const timing: Timing = { decode: [], whole: [], firstMs: 0 };
  // The photograph's worker counts processors when it is loaded.
  if (without === 'second thread')
    Object.defineProperty(navigator, 'hardwareConcurrency', { value: 1 });
  const { readPhoto } = await import('../../../workers/photo.ts');
  const { warmUp } = await import('../../../workers/warm-up.ts');
  // As the app does while a painter looks for a photograph.
  if (without !== 'warm-up') await warmUp();
  // The first round warms both up and is told by itself.
  for (let round = 0; round <= rounds; round++) {
    await settled();
    const a = performance.now();
    const bitmap = await createImageBitmap(file);
    const b = performance.now();
    bitmap.close();
    await settled();
    const c = performance.now();
    const { value } = await readPhoto({ file, keep: false }, () => {});
    const d = performance.now();
    if (!value.ok) throw new Error(value.fault.code);
    if (round === 0) {
      timing.firstMs = d - c;
      continue;
    }
    timing.decode.push(b - a);
    timing.whole.push(d - c);
  }
  scope.postMessage(timing);
};
