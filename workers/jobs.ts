/** What a worker says: that it listens, once; for each job news on the way, then a value or the reason why there is none. */
export type Reply<O, N> =
  | { readonly kind: 'ready' }
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
  send({ kind: 'ready' });
}

export interface JobOptions<N> {
  readonly signal: AbortSignal;
  readonly onNews?: (news: N) => void;
}

/** A worker that has been silent for so long is not waited upon alone: another is started beside it. */
const SILENT_MS = 6000;
/** How many are started for one, the last of which has three times as long. */
const STARTS = 3;

/**
 * A worker that is sent nothing before it has said that it listens: what reaches a module while it is still
 * being loaded is lost in Firefox, now and then. Where a module never comes, another is asked for.
 */
export class Helper<I, O, N> {
  /** What it says of the job that it has, but that it is ready. */
  onReply: ((reply: Exclude<Reply<O, N>, { kind: 'ready' }>) => void) | null = null;
  /** It did not start. */
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

  /** The first that listens is it. */
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

/** Runs one job in a worker of its own. Aborting ends the worker: nothing else stops a busy loop. */
export async function runJob<I, O, N>(
  spawn: () => Worker,
  input: I,
  options: JobOptions<N>,
): Promise<O> {
  options.signal.throwIfAborted();
  const helper = new Helper<I, O, N>(spawn);
  try {
    return await answered(helper, input, options);
  } finally {
    helper.end();
  }
}

/**
 * A worker that is kept for the next job of its kind, so that its code stays warm. While it is busy a
 * second job gets a worker of its own; a job that is stopped or fails takes its worker with it.
 */
export class WarmWorker {
  // Jobs of several kinds: each knows its own answer.
  #idle: Helper<unknown, unknown, unknown> | null = null;
  readonly #spawn: () => Worker;

  constructor(spawn: () => Worker) {
    this.#spawn = spawn;
  }

  /** Starts a worker before there is a job for it. */
  warm(): void {
    if (this.#idle) return;
    const helper = new Helper(this.#spawn);
    this.#idle = helper;
    // One that does not start is not waited upon.
    helper.onFail = () => {
      if (this.#idle === helper) this.#idle = null;
    };
  }

  async run<I, O, N>(input: I, options: JobOptions<N>): Promise<O> {
    options.signal.throwIfAborted();
    const helper = this.#idle ?? new Helper(this.#spawn);
    this.#idle = null;
    try {
      const value = await answered(helper as Helper<I, O, N>, input, options);
      if (this.#idle === null) this.#idle = helper;
      else helper.end();
      return value;
    } catch (error) {
      helper.end();
      throw error;
    }
  }
}

/** One job's answer from a worker that is not busy. */
function answered<I, O, N>(
  helper: Helper<I, O, N>,
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
