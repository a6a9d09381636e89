// The page's side of the engine: asks, waits, starts it again when it dies.
import { WHOLE } from './decode';
import { crashed, EngineError, stopped, superseded } from './errors';
import { fetchEngine, startWorker, type Kept, type Link, type Program } from './link';
import type { FromWorker, OpenPlan, Picture, ToWorker } from './protocol';
import { Queue, type Job } from './queue';
import { decodeSVG } from './svg';
import type { Calls, Closer, GroundChoice, Header, Opened, View } from './wire.gen';

export { EngineError } from './errors';

export type CallName = keyof Calls;
export type Ask<N extends CallName> = Calls[N]['ask'];

export interface Reply<N extends CallName> {
  answer: Calls[N]['answer'];
  bytes?: Uint8Array<ArrayBuffer>;
}

export interface CallOptions {
  /** Bytes that go with the request; they are moved, not copied. */
  bytes?: Uint8Array<ArrayBuffer>;
  /** Stops the call, running or waiting. */
  signal?: AbortSignal;
  onProgress?: (share: number, doing: string) => void;
  /** In one lane only the newest waiting call is kept. Without a lane every call is made. */
  lane?: string;
}

/** A file under its name. */
export interface NamedFile {
  file: Blob;
  name: string;
}

export type EngineState = 'starting' | 'ready' | 'crashed' | 'restarting';

export interface Engine {
  call<N extends CallName>(name: N, ask: Ask<N>, options?: CallOptions): Promise<Reply<N>>;
  /** Reads, decodes and opens a file, or two that are the lines and the colours of one drawing, in
   * either order. When they are refused, what was open stays open. */
  openFiles(files: readonly [NamedFile, NamedFile?], ground: GroundChoice, options?: CallOptions): Promise<Opened>;
  /** Takes a drawing whose answers are known already; it is opened when a call first speaks of it. */
  adopt(file: Blob, header: Header, plan: Known): void;
  /** The files of a drawing that is open, and how they were opened. */
  keptOf(drawing: string): Open | undefined;
  /** Takes back what was kept of a drawing; it is opened when a call first speaks of it. */
  takeBack(open: Open): void;
  /** Tells how the engine is, now and at each change; returns how to stop listening. */
  onState(listener: (state: EngineState) => void): () => void;
}

/** How often in a row the engine may die without an answer in between before
 * the page stops starting it again. */
const MOST_DEATHS = 4;

/** How often a call is made again after the engine died during it: once, in
 * case the death was not its doing (a system short of memory ends workers). */
const TRIES = 2;

/** A call in line or running. */
interface Running extends Job {
  id: number;
  name: string;
  /** The message to send, made anew for each try. */
  message(id: number): Promise<{ message: ToWorker; transfer: Transferable[] }>;
  /** The drawings it needs to be open. */
  drawings?: readonly string[] | undefined;
  tries: number;
  /** False when what it needs was moved away with the first try. */
  again: boolean;
  onProgress?: CallOptions['onProgress'] | undefined;
  answer(json: string, bytes: Uint8Array<ArrayBuffer> | undefined): void;
  fail(err: EngineError): void;
}

/** What the person's choice says of a drawing. */
type Known = Pick<OpenPlan, 'id' | 'fileName' | 'ground'>;

/** A drawing the engine holds, and how to open it again. */
export interface Open {
  files: HeadedFile[];
  plan: OpenPlan;
}

interface HeadedFile extends NamedFile {
  header: Header;
}

/** One program in a worker of its own. */
export class Client implements Engine {
  private readonly queue = new Queue<Running>();
  private readonly drawings = new Map<string, Open>();
  /** Drawings the present worker holds. */
  private held = new Set<string>();
  private readonly listeners = new Set<(s: EngineState) => void>();
  private state: EngineState = 'starting';
  private kept: Kept | undefined;
  private link: Link | undefined;
  private running: Running | undefined;
  private deaths = 0;
  private nextID = 1;
  private headerBytes = 0;

  constructor(private readonly program: Program, after: Promise<unknown>) {
    void after.then(() => this.begin());
  }

  onState(listener: (s: EngineState) => void): () => void {
    this.listeners.add(listener);
    listener(this.state);
    return () => this.listeners.delete(listener);
  }

  call<N extends CallName>(name: N, ask: Ask<N>, options: CallOptions = {}): Promise<Reply<N>> {
    const text = JSON.stringify(ask);
    const bytes = options.bytes ?? null;
    return this.submit<N>({
      name,
      drawings: drawingsOf(ask),
      again: bytes === null,
      message: async (id) => ({
        message: { type: 'call', id, name, ask: text, bytes },
        transfer: bytes ? [bytes.buffer] : [],
      }),
    }, options);
  }

  async openFiles(files: readonly [NamedFile, NamedFile?], ground: GroundChoice, options: CallOptions = {}): Promise<Opened> {
    const headed: HeadedFile[] = [];
    for (const f of files) {
      if (!f) continue;
      const header = await this.headerOf(f.file, f.name, options);
      // The second picture is brought to the raster of the first; whether their files agree in size the engine says.
      const { workW, workH } = headed[0]?.header ?? header;
      headed.push({ ...f, header: { ...header, workW, workH } });
    }
    const open: Open = {
      files: headed,
      plan: { id: freshID(), fileName: files[0].name, ground, finest: finestOf(headed), part: WHOLE },
    };
    const submit = () => this.submit<'open'>({ name: 'open', again: true, message: openMessage(open) }, options);
    let { answer } = await submit();
    if (answer.closer) {
      lookCloser(open, answer.closer);
      ({ answer } = await submit());
    }
    this.drawings.set(open.plan.id, open);
    this.held.add(open.plan.id);
    return answer;
  }

  adopt(file: Blob, header: Header, plan: Known): void {
    this.drawings.set(plan.id, { files: [{ file, name: plan.fileName, header }], plan: { ...plan, finest: 0, part: WHOLE } });
  }

  keptOf(drawing: string): Open | undefined {
    return this.drawings.get(drawing);
  }

  takeBack(open: Open): void {
    this.drawings.set(open.plan.id, open);
  }

  private async headerOf(file: Blob, name: string, options: CallOptions): Promise<Header> {
    this.headerBytes ||= (await this.call('hello', {})).answer.headerBytes;
    const bytes = new Uint8Array(await readStart(file, this.headerBytes));
    const { signal } = options;
    return (await this.call('header', { fileName: name, size: file.size }, signal ? { bytes, signal } : { bytes })).answer;
  }

  private submit<N extends CallName>(what: Pick<Running, 'name' | 'message' | 'again' | 'drawings'>, options: CallOptions): Promise<Reply<N>> {
    return new Promise((resolve, reject: (e: EngineError) => void) => {
      if (options.signal?.aborted) {
        reject(stopped());
        return;
      }
      const id = this.nextID++;
      const job: Running = {
        ...what,
        id,
        tries: 0,
        lane: options.lane ?? `call ${id}`,
        onProgress: options.onProgress,
        answer: (json, bytes) => resolve(bytes ? { answer: JSON.parse(json), bytes } : { answer: JSON.parse(json) }),
        fail: reject,
        drop: () => reject(superseded()),
      };
      options.signal?.addEventListener('abort', () => this.stop(job), { once: true });
      this.queue.push(job);
      this.pump();
    });
  }

  private stop(job: Running): void {
    if (this.queue.remove(job)) job.fail(stopped());
    else if (this.running === job) this.link?.send({ type: 'stop', id: job.id });
  }

  // ---- one call at a time

  private pump(): void {
    if (this.running || this.state !== 'ready') return;
    const job = this.queue.next();
    if (!job) return;
    const lost = job.drawings?.map((d) => this.lost(d)).find((d) => d !== undefined);
    if (lost) {
      this.queue.pushFirst(job);
      this.openAgain(lost);
      return;
    }
    void this.run(job);
  }

  private async run(job: Running): Promise<void> {
    const link = this.link;
    this.running = job;
    job.tries++;
    try {
      const { message, transfer } = await job.message(job.id);
      if (this.link === link && this.running === job) link?.send(message, transfer);
    } catch (err) {
      this.settle(job, () => job.fail(err instanceof EngineError ? err : unexpected(err)));
    }
  }

  private settle(job: Running, how: () => void): void {
    if (this.running === job) this.running = undefined;
    how();
    this.pump();
  }

  // ---- drawings

  /** A drawing that was opened but that this worker does not hold. */
  private lost(drawing: string): Open | undefined {
    return this.held.has(drawing) ? undefined : this.drawings.get(drawing);
  }

  private openAgain(open: Open): void {
    const { id } = open.plan;
    this.held.add(id);
    void this.run({
      id: this.nextID++,
      name: 'open',
      lane: `again ${id}`,
      tries: 0,
      again: true,
      message: openMessage(open),
      answer: () => {},
      // The call that needed it now fails in the engine's own words.
      fail: () => this.drawings.delete(id),
      drop: () => {},
    });
  }

  // ---- the worker's life

  private async begin(): Promise<void> {
    try {
      this.kept = await fetchEngine(this.program);
      this.startWorker();
    } catch (err) {
      this.giveUp(new EngineError(`The engine could not be loaded (${String(err)}).`, 'Check the connection and load the page again.', 'crashed'));
    }
  }

  private startWorker(): void {
    if (!this.kept) return;
    const link: Link = startWorker(this.kept, {
      message: (m) => {
        if (this.link === link) this.hear(m);
      },
      died: () => {
        if (this.link === link) this.died();
      },
    });
    this.link = link;
  }

  private hear(m: FromWorker): void {
    const job = this.running;
    switch (m.type) {
      case 'ready':
        this.setState('ready');
        this.pump();
        return;
      case 'ended':
        this.died();
        return;
    }
    if (!job || job.id !== m.id) return;
    this.deaths = 0;
    if (m.type === 'progress') job.onProgress?.(m.share, m.doing);
    else if (m.type === 'answer') this.settle(job, () => job.answer(m.json, m.bytes));
    else this.failed(job, m.failure.kind, new EngineError(m.failure.what, m.failure.do, m.failure.kind));
  }

  /** A drawing the engine let go to save memory is opened again, unseen. */
  private failed(job: Running, kind: string, err: EngineError): void {
    const gone = kind === 'gone' && job.again && job.tries < TRIES ? (job.drawings ?? []) : [];
    if (gone.length > 0) {
      for (const d of gone) this.held.delete(d);
      this.running = undefined;
      this.queue.pushFirst(job);
      this.pump();
      return;
    }
    this.settle(job, () => job.fail(err));
  }

  private died(): void {
    const job = this.running;
    this.link?.end();
    this.link = undefined;
    this.running = undefined;
    this.held = new Set();
    this.deaths++;
    this.setState('crashed');
    if (job && job.again && job.tries < TRIES) this.queue.pushFirst(job);
    else job?.fail(crashed());
    if (this.deaths >= MOST_DEATHS) {
      this.giveUp(new EngineError('The engine keeps stopping.', 'Load the page again; if that does not help, use another browser.', 'crashed'));
      return;
    }
    this.setState('restarting');
    this.startWorker();
  }

  private giveUp(err: EngineError): void {
    this.setState('crashed');
    for (const job of this.queue.drain()) job.fail(err);
    // What is asked from now on fails too, rather than waiting for ever.
    this.queue.push = (job) => job.fail(err);
  }

  private setState(state: EngineState): void {
    this.state = state;
    for (const tell of this.listeners) tell(state);
  }
}

/** A name that no drawing has, here or in what was kept. */
const freshID = () => `drawing-${Math.random().toString(36).slice(2, 12)}`;

/** Past this many pixels a file is not decoded whole, so not drawn again closer:
 * 50 megapixels are 200 MB. */
const DRAWN_AGAIN = 50e6;

/** A vector drawing can be drawn as large as wished; eight times is more than any pin needs. */
const VECTOR_TIMES = 8;

/** The long side at which all files of a drawing could be drawn, px; 0 when one of them could not. */
function finestOf(files: readonly HeadedFile[]): number {
  return Math.min(...files.map(({ header: h }) => {
    if (h.format === 'svg') return VECTOR_TIMES * Math.max(h.workW, h.workH);
    return h.w * h.h > DRAWN_AGAIN ? 0 : Math.max(h.w, h.h);
  }));
}

function lookCloser(open: Open, { part, workW, workH }: Closer): void {
  open.plan.part = part;
  for (const f of open.files) f.header = { ...f.header, workW, workH };
}

function openMessage(open: Open): Running['message'] {
  return async (id) => {
    const pictures: Picture[] = [];
    for (const f of open.files) pictures.push(f.header.format === 'svg' ? { name: f.name, header: f.header, pixels: await decodeSVG(f.file, f.header, open.plan.part) } : f);
    const transfer = pictures.flatMap((p) => ('pixels' in p ? [p.pixels.bytes.buffer] : []));
    return { message: { type: 'open', id, pictures, ask: open.plan }, transfer };
  };
}

async function readStart(file: Blob, most: number): Promise<ArrayBuffer> {
  try {
    return await file.slice(0, most).arrayBuffer();
  } catch {
    throw new EngineError('This file could not be read: it may have been moved or changed.', 'Choose it again.', 'refused');
  }
}

/** The drawings a request is about: those of a whole project, or that on the sheet, the one before it where they are compared, and another it names. */
export function drawingsOf(ask: unknown): string[] {
  const a = ask as { drawing?: string; view?: View; picked?: Calls['check']['ask']['picked'] } & Partial<Calls['orderitems']['ask']>;
  if (a.project) return a.project.order.designs.flatMap((d) => d.drawings.slice(-1).map((r) => r.id));
  const refs = a.picked?.project.order.designs[a.picked.design]?.drawings ?? [];
  const onSheet = refs.slice(a.view === 'changed' ? -2 : -1).map((r) => r.id);
  return a.drawing ? [...onSheet, a.drawing] : onSheet;
}

function unexpected(err: unknown): EngineError {
  return new EngineError(`Something went wrong: ${String(err)}.`, 'Try again.', 'refused');
}
