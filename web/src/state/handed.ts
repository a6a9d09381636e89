// A version as struck, handed from the pin's program to the second one, which
// traces, prints and compares it.
import type { Ask, CallName, CallOptions, Reply } from '../engine/client';
import type { Calls, Project } from '../engine/wire.gen';
import { atHand } from './desk';
import type { Place } from './project';
import * as s from './store';

/** The calls about a version that was handed over. */
export type HandedCall = { [N in CallName]: Calls[N]['ask'] extends { of: string } ? N : never }[CallName];

/** By the order it was asked for, so an old one goes with its order, and a change
 * of plans asks for nothing again. */
const handed = new WeakMap<Project['order'], Map<string, Promise<string>>>();

/** The key of a version in the second program, handed over once. */
export function handing(p: Project, at: Place): Promise<string> {
  const of = handed.get(p.order) ?? new Map<string, Promise<string>>();
  handed.set(p.order, of);
  const place = `${at.design} ${at.version}`;
  const before = of.get(place);
  if (before) return before;
  const key = handOver(p, at);
  of.set(place, key);
  key.catch(() => of.delete(place));
  return key;
}

async function handOver(p: Project, at: Place): Promise<string> {
  const engine = atHand.value;
  if (!engine) throw new Error('The engine is not there yet.');
  const { answer, bytes } = await engine.call('struck', { picked: s.pickedAt(p, at) });
  return (await engine.call('hand', answer, bytes ? { bytes } : {})).answer.key;
}

export const gone = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && err.kind === 'gone';

/** Makes a call about a version; one that the second program let go is handed
 * over again. Bytes are made anew for each try, because they are moved. */
export async function about<N extends HandedCall>(
  p: Project, at: Place, name: N, ask: Omit<Ask<N>, 'of'>, options: CallOptions = {}, bytes?: () => Uint8Array<ArrayBuffer>,
): Promise<Reply<N>> {
  const engine = atHand.value;
  if (!engine) throw new Error('The engine is not there yet.');
  const call = async () => engine.call(name, { ...ask, of: await handing(p, at) } as Ask<N>, bytes ? { ...options, bytes: bytes() } : options);
  try {
    return await call();
  } catch (err) {
    if (!gone(err)) throw err;
    handed.delete(p.order);
    return call();
  }
}
