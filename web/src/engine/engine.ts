// The engine as the page knows it: two programs behind one set of calls.
import { Client, type Ask, type CallName, type CallOptions, type Engine, type Reply } from './client';
import { ORDER_CALLS } from './wire.gen';

const OF_ORDER = new Set<CallName>(ORDER_CALLS);

/** Starts the pin's program; fetching and compiling it keeps both hands of a
 * small machine full, so it may wait until something else is done. The order's
 * program starts with the first call that needs it. */
export function startEngine(after: Promise<unknown> = Promise.resolve()): Engine {
  const pin = new Client('pin', after);
  let order: Client | undefined;
  const answering = (name: CallName) => (OF_ORDER.has(name) ? (order ??= new Client('order', after)) : pin);
  return {
    call: <N extends CallName>(name: N, ask: Ask<N>, options?: CallOptions): Promise<Reply<N>> => answering(name).call(name, ask, options),
    openFiles: (files, ground, options) => pin.openFiles(files, ground, options),
    adopt: (file, header, plan) => pin.adopt(file, header, plan),
    keptOf: (drawing) => pin.keptOf(drawing),
    takeBack: (open) => pin.takeBack(open),
    onState: (listener) => pin.onState(listener),
  };
}
