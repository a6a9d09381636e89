// The worker: runs the engine, decodes raster files, passes messages.
import '../../../.build/wasm_exec.js';
import { decodeRaster } from './decode';
import { EngineError } from './errors';
import type { FromWorker, OpenPlan, Picture, Pixels, ToWorker } from './protocol';
import type { Failure, OpenAsk } from './wire.gen';

interface EngineReply {
  json: string;
  bytes?: Uint8Array<ArrayBuffer>;
}

type Report = (share: number, doing: string) => boolean;

interface GoProgram {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

interface Scope {
  Go: new () => GoProgram;
  badgewrightReady?: () => void;
  badgewrightCall(name: string, ask: string, bytes: Uint8Array | null, report: Report): Promise<EngineReply>;
  postMessage(message: FromWorker, transfer?: Transferable[]): void;
  addEventListener(type: 'message', listener: (e: MessageEvent<ToWorker>) => void): void;
}

const scope = globalThis as unknown as Scope;
const stops = new Set<number>();

scope.addEventListener('message', ({ data }) => {
  switch (data.type) {
    case 'start':
      void start(data.module);
      break;
    case 'call':
      void answer(data.id, () => ask(data.id, data.name, data.ask, data.bytes));
      break;
    case 'open':
      void answer(data.id, () => open(data.id, data.pictures, data.ask));
      break;
    case 'stop':
      stops.add(data.id);
  }
});

async function start(module: WebAssembly.Module): Promise<void> {
  const go = new scope.Go();
  scope.badgewrightReady = () => scope.postMessage({ type: 'ready' });
  try {
    await go.run(await WebAssembly.instantiate(module, go.importObject));
    scope.postMessage({ type: 'ended', why: 'the program ended' });
  } catch (err) {
    scope.postMessage({ type: 'ended', why: String(err) });
  }
}

function ask(id: number, name: string, text: string, bytes: Uint8Array | null): Promise<EngineReply> {
  return scope.badgewrightCall(name, text, bytes, (share, doing) => {
    scope.postMessage({ type: 'progress', id, share, doing });
    return !stops.has(id);
  });
}

async function open(id: number, pictures: Picture[], plan: OpenPlan): Promise<EngineReply> {
  const all: Pixels[] = [];
  for (const p of pictures) all.push('pixels' in p ? p.pixels : await decodeRaster(p.file, p.header, plan.part));
  const [first, second] = all;
  const [a, b] = pictures;
  if (!first || !a) throw new Error('nothing to open');
  const request: OpenAsk = { ...plan, w: first.w, h: first.h, fileW: a.header.w, fileH: a.header.h, space: first.space };
  if (second && b) request.second = { fileName: b.name, fileW: b.header.w, fileH: b.header.h, space: second.space };
  return ask(id, 'open', JSON.stringify(request), second ? joined(first.bytes, second.bytes) : first.bytes);
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

async function answer(id: number, work: () => Promise<EngineReply | undefined>): Promise<void> {
  try {
    const reply = await work();
    // A program that died says nothing here; that it ended is told by start.
    if (!reply) return;
    const { json, bytes } = reply;
    if (bytes) scope.postMessage({ type: 'answer', id, json, bytes }, [bytes.buffer]);
    else scope.postMessage({ type: 'answer', id, json });
  } catch (err) {
    scope.postMessage({ type: 'failure', id, failure: failureOf(err) });
  } finally {
    stops.delete(id);
  }
}

/** The engine rejects with plain {what, do, kind}; the decoder with an EngineError. */
function failureOf(err: unknown): Failure {
  if (err instanceof EngineError && (err.kind === 'refused' || err.kind === 'stopped')) {
    return { what: err.what, do: err.do, kind: err.kind };
  }
  const f = err as Partial<Failure> | undefined;
  if (typeof f?.what === 'string' && typeof f.kind === 'string') return { what: f.what, do: f.do ?? '', kind: f.kind };
  return { what: `Something went wrong: ${String(err)}.`, do: 'Try again.', kind: 'refused' };
}
