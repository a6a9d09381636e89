// The worker: runs the engine, decodes raster files, passes messages.
import '../../../.build/wasm_exec.js';
import { decodeRaster } from './decode';
import { EngineError } from './errors';
import type { FromWorker, OpenPlan, Pixels, ToWorker } from './protocol';
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
      void answer(data.id, async () => open(data.id, await decodeRaster(data.file, data.header), data.header, data.ask));
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

function open(id: number, pixels: Pixels, file: { w: number; h: number }, plan: OpenPlan): Promise<EngineReply> {
  const request: OpenAsk = { ...plan, w: pixels.w, h: pixels.h, fileW: file.w, fileH: file.h, space: pixels.space };
  return ask(id, 'open', JSON.stringify(request), pixels.bytes);
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
