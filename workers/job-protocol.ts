/**
 * Messages of a worker: `ready` once; then for each job any number of `news`, and one `value` or
 * `failed`.
 */
type Reply<O, N> =
  | { readonly kind: 'ready' }
  | { readonly kind: 'news'; readonly news: N }
  | { readonly kind: 'value'; readonly value: O }
  | { readonly kind: 'failed'; readonly message: string };

/**
 * The part of a worker's global scope that {@link serve} uses; page and worker threads both have
 * it.
 */
interface Port {
  onmessage: ((event: MessageEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  postMessage(message: unknown, transfer?: Transferable[]): void;
}

/** A result, with the buffers in it to transfer instead of copying. */
export type JobResult<O> = { readonly value: O; readonly transfer?: Transferable[] };

/** Executes one job per message. The job function does not know where it runs. */
export function serve<I, O, N>(
  port: Port,
  job: (input: I, tell: (news: N) => void) => Promise<JobResult<O>> | JobResult<O>,
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
  send({ kind: 'ready' });
}

/** `signal` stops the job; `onNews` receives its progress. */
export interface JobOptions<N> {
  readonly signal: AbortSignal;
  readonly onNews?: (news: N) => void;
}

/** Start timeout: a worker that has not answered gets a second one started beside it. */
const SILENT_MS = 6000;
/** Most workers started for one job; the n-th timeout is n times as long. */
const STARTS = 3;

/**
 * A worker that receives jobs only after it reported `ready`: Firefox occasionally loses messages
 * sent to a module that is still loading. If a worker does not start, it starts another.
 */
export class ReadyWorker<I, O, N> {
  /** Receives every reply except `ready`. */
  onReply: ((reply: Exclude<Reply<O, N>, { kind: 'ready' }>) => void) | null = null;
  /** Called if no worker starts. */
  onFail: ((why: string) => void) | null = null;
  readonly #spawn: () => Worker;
  readonly #waiting: I[] = [];
  #starting: Worker[] = [];
  #worker: Worker | null = null;
  #silence: ReturnType<typeof setTimeout> | undefined;

  constructor(spawn: () => Worker) {
    this.#spawn = spawn;
    this.#start();
  }

  send(input: I): void {
    if (this.#worker) this.#worker.postMessage(input);
    else this.#waiting.push(input);
  }

  end(): void {
    this.#stopWaiting();
    this.#worker?.terminate();
  }

  #start(): void {
    const worker = this.#spawn();
    this.#starting.push(worker);
    worker.onmessage = ({ data }: MessageEvent<Reply<O, N>>) => {
      if (data.kind === 'ready') this.#take(worker);
      else this.onReply?.(data);
    };
    worker.onerror = ({ message }) => this.#fail(message || NOT_STARTED);
    const starts = this.#starting.length;
    this.#silence = setTimeout(() => {
      if (starts < STARTS) this.#start();
      else this.#fail(NOT_STARTED);
    }, SILENT_MS * starts);
  }

  /** The first worker that is ready wins; the others end. */
  #take(worker: Worker): void {
    this.#starting = this.#starting.filter((one) => one !== worker);
    this.#stopWaiting();
    this.#worker = worker;
    for (const input of this.#waiting) worker.postMessage(input);
  }

  #fail(why: string): void {
    this.#stopWaiting();
    this.onFail?.(why);
  }

  #stopWaiting(): void {
    clearTimeout(this.#silence);
    for (const worker of this.#starting) worker.terminate();
    this.#starting = [];
  }
}

const NOT_STARTED = 'the worker did not start';

/**
 * Runs one job in its own worker. Aborting terminates the worker: nothing else stops a busy loop.
 * @throws the abort reason, or Error if the worker fails or does not start
 */
export async function runJob<I, O, N>(
  spawn: () => Worker,
  input: I,
  options: JobOptions<N>,
): Promise<O> {
  options.signal.throwIfAborted();
  const helper = new ReadyWorker<I, O, N>(spawn);
  try {
    return await sendJob(helper, input, options);
  } finally {
    helper.end();
  }
}

/**
 * Keeps a worker for the next job, so that its code stays compiled. A second job during the first
 * gets its own worker. A stopped or failed job terminates its worker.
 */
export class WarmWorker {
  // Jobs of several kinds share it; each knows the type of its answer.
  #idle: ReadyWorker<unknown, unknown, unknown> | null = null;
  readonly #spawn: () => Worker;

  constructor(spawn: () => Worker) {
    this.#spawn = spawn;
  }

  /** Starts a worker before there is a job for it. */
  warm(): void {
    if (this.#idle) return;
    const helper = new ReadyWorker(this.#spawn);
    this.#idle = helper;
    // Drop a worker that does not start.
    helper.onFail = () => {
      if (this.#idle === helper) this.#idle = null;
    };
  }

  /**
   * Runs one job.
   * @throws the abort reason, or Error if the worker fails or does not start
   */
  async run<I, O, N>(input: I, options: JobOptions<N>): Promise<O> {
    options.signal.throwIfAborted();
    const helper = this.#idle ?? new ReadyWorker(this.#spawn);
    this.#idle = null;
    try {
      const value = await sendJob(helper as ReadyWorker<I, O, N>, input, options);
      if (this.#idle === null) this.#idle = helper;
      else helper.end();
      return value;
    } catch (error) {
      helper.end();
      throw error;
    }
  }
}

/** Sends a job to an idle worker and waits for its answer. */
function sendJob<I, O, N>(
  helper: ReadyWorker<I, O, N>,
  input: I,
  { signal, onNews }: JobOptions<N>,
): Promise<O> {
  return new Promise<O>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
    helper.onFail = (why) => reject(new Error(why));
    helper.onReply = (reply) => {
      if (reply.kind === 'news') onNews?.(reply.news);
      else if (reply.kind === 'value') resolve(reply.value);
      else reject(new Error(reply.message));
    };
    helper.send(input);
  });
}
