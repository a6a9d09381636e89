// One worker, from its start to its end.
import workerAddress from './worker.ts?worker&url';
import orderAddress from '../../../.build/order.wasm?url';
import pinAddress from '../../../.build/pin.wasm?url';
import type { FromWorker, ToWorker } from './protocol';

/** A running worker. */
export interface Link {
  send(message: ToWorker, transfer?: Transferable[]): void;
  end(): void;
}

export interface Heard {
  message(m: FromWorker): void;
  /** The worker died without a word. */
  died(why: string): void;
}

/** What is fetched once and kept: the compiled engine and the worker's address. */
export interface Kept {
  module: WebAssembly.Module;
  script: string;
}

/** The two programs: what is asked of a drawing, and what needs none. */
export type Program = 'pin' | 'order';

const ADDRESS: Record<Program, string> = { pin: pinAddress, order: orderAddress };

export async function fetchEngine(program: Program): Promise<Kept> {
  const [module, script] = await Promise.all([compile(ADDRESS[program]), workerBlob(workerAddress)]);
  return { module, script };
}

async function compile(address: string): Promise<WebAssembly.Module> {
  const response = await fetched(address);
  // Some static hosts do not know the type of .wasm files; those go the long way.
  const typed = response.headers.get('content-type')?.startsWith('application/wasm');
  if (typed && typeof WebAssembly.compileStreaming === 'function') return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}

/** A worker loaded by address would not be bound by the page's policy; one
 * started from a blob inherits it. */
async function workerBlob(address: string): Promise<string> {
  const text = await (await fetched(address)).text();
  return URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
}

async function fetched(address: string): Promise<Response> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status} ${response.statusText}`);
  return response;
}

export function startWorker(kept: Kept, heard: Heard): Link {
  const worker = new Worker(kept.script, { name: 'engine' });
  worker.addEventListener('message', (e: MessageEvent<FromWorker>) => heard.message(e.data));
  worker.addEventListener('error', (e) => {
    e.preventDefault();
    heard.died(e.message || 'the worker died');
  });
  worker.addEventListener('messageerror', () => heard.died('a message could not be read'));
  const link: Link = {
    send: (message, transfer) => worker.postMessage(message, transfer ?? []),
    end: () => worker.terminate(),
  };
  link.send({ type: 'start', module: kept.module });
  return link;
}
