// The sizes that hold, for the drawing on the sheet, and what if a limit were another.
import { effect, signal, untracked } from '@preact/signals';
import { SMALL } from '../engine/queue';
import type { Limits, Project, Sizes, SizesFor } from '../engine/wire.gen';
import { atHand } from './desk';
import { designOf, drawingOf } from './project';
import * as s from './store';

export const sizes = signal<{ project: Project; sizes: Sizes } | undefined>(undefined);

/** A limit that is only thought of. */
export interface Thought {
  key: 'line' | 'area' | 'edge';
  mm: number;
}

export const thought = signal<Thought | undefined>(undefined);
export const thoughtOf = signal<{ thought: Thought; row: SizesFor } | undefined>(undefined);

export function withThought(limits: Limits, t: Thought): Limits {
  return { ...limits, [t.key]: t.mm };
}

/** What the sizes hang on; a change of size asks nothing anew. */
function cause(p: Project): string {
  const d = designOf(p);
  return JSON.stringify([d?.drawings, d?.colours, d?.edits, d?.recipes, d?.lettering, d?.parts, d?.limits, d?.making, d?.fill, d?.base, d?.thickness, d?.size.by]);
}

/** Let a wish settle before these follow, ms. */
const SETTLE = 200;

/** Keeps the sizes up with the project: called once. */
export function followSizes(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last = '';
  const stop = effect(() => {
    const p = s.history.value?.now;
    if (!p || !atHand.value || !drawingOf(p)) return;
    const now = cause(p);
    if (now === last) return;
    last = now;
    untracked(() => {
      thought.value = undefined;
      clearTimeout(timer);
      timer = setTimeout(() => void ask(p, () => last === now), SETTLE);
    });
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}

async function ask(project: Project, current: () => boolean): Promise<void> {
  try {
    const got = await atHand.value?.call('sizes', { picked: s.picked(project) }, { lane: 'sizes' });
    if (got && current()) sizes.value = { project, sizes: got.answer };
  } catch {
    // Overtaken, or the check has said already what is wrong.
  }
}

/** Asks about a limit without changing it. */
export async function think(t: Thought | undefined): Promise<void> {
  thought.value = t;
  const p = s.asked.value;
  const limits = s.design.value?.limits;
  if (!t || !p || !limits) return;
  try {
    const got = await atHand.value?.call('sizes', { picked: s.picked(p), whatIf: withThought(limits, t) }, { lane: `${SMALL}what if` });
    const row = got?.answer.rows[0];
    // Another may be thought of by now; its answer follows.
    if (row && thought.value !== undefined) thoughtOf.value = { thought: t, row };
  } catch {
    // Overtaken by the next thought.
  }
}
