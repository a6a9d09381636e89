// The parts of a pin: what the person says they are, and the eyes they hang by,
// as they are while one is moved.
import { effect, signal } from '@preact/signals';
import type { HeldParts, Join, Parts, PartsChoice, Project } from '../engine/wire.gen';
import { SMALL } from '../engine/queue';
import { atHand, faultOf } from './desk';
import { designOf, withDesign } from './project';
import * as s from './store';

/** Which eye: of which join, at which end of it. */
export interface EyeRef {
  join: number;
  end: 'upper' | 'lower';
}

/** An eye on its way, of one project. */
interface Moving {
  project: Project;
  eye: EyeRef;
  joins: Join[];
  /** The newest answer for these places, or for those just before. */
  held?: HeldParts;
  /** Let go, and waiting for the sheet to show it. */
  done?: boolean;
}

export const movingEye = signal<Moving | undefined>(undefined);

/** A choice is being looked into. */
export const choosing = signal(false);

/** The parts as they are while an eye moves, until the sheet shows that. */
export function liveParts(): HeldParts | undefined {
  const m = movingEye.value;
  return m && m.project === s.asked.value ? m.held : undefined;
}

/** Forgets a move once the sheet shows it: called once. */
export function followEyes(): () => void {
  return effect(() => {
    const m = movingEye.value;
    if (m?.done && m.project === s.shown.value?.project) movingEye.value = undefined;
  });
}

const SAID: Record<PartsChoice, string> = { dangle: 'Hung the parts from each other', one: 'Made the parts one piece', '': 'Left open what the parts are' };

/** Says what the parts are; what that brings with it is one step that can be undone. */
export async function chooseParts(choice: PartsChoice): Promise<void> {
  const project = s.asked.value;
  if (!project || choosing.value) return;
  choosing.value = true;
  const stopper = new AbortController();
  try {
    const got = await atHand.value?.call('parts', { picked: s.picked(project), choice }, {
      lane: 'parts', signal: stopper.signal,
      onProgress: (share, step) => (s.work.value = share >= 1 ? undefined : { doing: step, share, stop: () => stopper.abort() }),
    });
    if (!got || s.asked.value !== project) return;
    const { parts, recipes, fits, words } = got.answer;
    s.change((p) => withDesign(p, { parts, recipes }), SAID[choice]);
    if (!fits) s.tell(words);
  } catch (err) {
    complain(err);
  } finally {
    s.work.value = undefined;
    choosing.value = false;
  }
}

/** Changes how the parts hang, as they are by then. */
export function withJoins(p: Project, change: (all: readonly Join[]) => Join[]): Project {
  const parts: Parts | undefined = designOf(p)?.parts;
  return parts ? withDesign(p, { parts: { ...parts, joins: change(parts.joins ?? []) } }) : p;
}

/** Puts one eye at a place, in shares of the drawing. */
export function eyeAt(all: readonly Join[], { join, end }: EyeRef, at: [number, number]): Join[] {
  return all.map((j, i) => (i === join ? { ...j, [end]: { at } } : j));
}

/** Moves one eye to a place, in shares of the drawing. */
export function moveEye(eye: EyeRef, at: [number, number]): void {
  const project = s.asked.value;
  if (!project) return;
  const before = movingEye.value?.project === project ? movingEye.value : undefined;
  const joins = eyeAt(before?.joins ?? designOf(project)?.parts?.joins ?? [], eye, at);
  movingEye.value = { project, eye, joins, ...(before?.held ? { held: before.held } : {}) };
  void ask(project, joins);
}

let pending: Promise<void> | undefined;

async function ask(project: Project, joins: Join[]): Promise<void> {
  const now = (async () => {
    try {
      const got = await atHand.value?.call('eyes', { picked: s.picked(project), joins }, { lane: `${SMALL}eyes` });
      const m = movingEye.value;
      if (got && m?.project === project) movingEye.value = { ...m, held: got.answer };
    } catch {
      // Overtaken by a newer place, which is answered in its turn.
    }
  })();
  pending = now;
  await now;
}

/** Keeps the eye where it is now: one step that can be undone. */
export async function dropEye(what: string): Promise<void> {
  let seen: typeof pending;
  // A key that is pressed again meanwhile moves on: its place is the one kept.
  do {
    seen = pending;
    await seen;
  } while (pending !== seen);
  const last = movingEye.value;
  if (!last || last.done) return;
  if (last.project === s.asked.value) s.change((p) => withJoins(p, () => last.joins), what);
  movingEye.value = s.asked.value ? { ...last, project: s.asked.value, done: true } : undefined;
}

/** Leaves the eyes as they were. */
export function leaveEyes(): void {
  movingEye.value = undefined;
}

function complain(err: unknown): void {
  const kind = typeof err === 'object' && err !== null && 'kind' in err ? err.kind : undefined;
  if (kind === 'stopped' || kind === 'superseded') return;
  const fault = faultOf(err);
  s.tell(fault.what, fault.do);
}
