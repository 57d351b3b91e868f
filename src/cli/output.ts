/** Where a command writes: the result to standard output, messages for the reader to standard error. */
export interface Output {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** The streams of this process. */
export const processOutput: Output = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
};
