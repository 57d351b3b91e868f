/** What a worker answers: news on the way, then a value or the reason why there is none. */
export type Reply<O, N> =
  | { readonly kind: 'news'; readonly news: N }
  | { readonly kind: 'value'; readonly value: O }
  | { readonly kind: 'failed'; readonly message: string };

/** The part of a worker's own scope that {@link serve} needs; both thread kinds have it. */
interface Port {
  onmessage: ((event: MessageEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  postMessage(message: unknown, transfer?: Transferable[]): void;
}

/** Buffers inside a value that may be handed over instead of copied. */
export type Handed<O> = { readonly value: O; readonly transfer?: Transferable[] };

/** Answers every message with one job's value; the job does not know where it runs. */
export function serve<I, O, N>(
  port: Port,
  job: (input: I, tell: (news: N) => void) => Promise<Handed<O>> | Handed<O>,
): void {
  const send = (reply: Reply<O, N>, transfer: Transferable[] = []) =>
    port.postMessage(reply, transfer);
  port.onmessageerror = () => send({ kind: 'failed', message: 'the job could not be handed over' });
  port.onmessage = ({ data }: MessageEvent<I>) => {
    void (async () => {
      try {
        const { value, transfer } = await job(data, (news) => send({ kind: 'news', news }));
        send({ kind: 'value', value }, transfer);
      } catch (error) {
        send({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
      }
    })();
  };
}

export interface JobOptions<N> {
  readonly signal: AbortSignal;
  readonly onNews?: (news: N) => void;
}

/** Runs one job in a worker of its own. Aborting ends the worker: nothing else stops a busy loop. */
export async function runJob<I, O, N>(
  spawn: () => Worker,
  input: I,
  options: JobOptions<N>,
): Promise<O> {
  options.signal.throwIfAborted();
  const worker = spawn();
  try {
    return await answered<I, O, N>(worker, input, options);
  } finally {
    worker.terminate();
  }
}

/**
 * A worker that is kept for the next job of its kind, so that its code stays warm. While it is busy a
 * second job gets a worker of its own; a job that is stopped or fails takes its worker with it.
 */
export class WarmWorker {
  #idle: Worker | null = null;
  readonly #spawn: () => Worker;

  constructor(spawn: () => Worker) {
    this.#spawn = spawn;
  }

  /** Starts a worker before there is a job for it. */
  warm(): void {
    if (this.#idle) return;
    const worker = this.#spawn();
    this.#idle = worker;
    // One that does not start is not waited upon.
    worker.onerror = () => {
      if (this.#idle === worker) this.#idle = null;
    };
  }

  async run<I, O, N>(input: I, options: JobOptions<N>): Promise<O> {
    options.signal.throwIfAborted();
    const worker = this.#idle ?? this.#spawn();
    this.#idle = null;
    try {
      const value = await answered<I, O, N>(worker, input, options);
      if (this.#idle === null) this.#idle = worker;
      else worker.terminate();
      return value;
    } catch (error) {
      worker.terminate();
      throw error;
    }
  }
}

/** One job's answer from a worker that is not busy. */
function answered<I, O, N>(
  worker: Worker,
  input: I,
  { signal, onNews }: JobOptions<N>,
): Promise<O> {
  return new Promise<O>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
    worker.onerror = (event) => reject(new Error(event.message || 'the worker did not start'));
    worker.onmessage = ({ data }: MessageEvent<Reply<O, N>>) => {
      if (data.kind === 'news') onNews?.(data.news);
      else if (data.kind === 'value') resolve(data.value);
      else reject(new Error(data.message));
    };
    worker.postMessage(input);
  });
}
