// Posts moved by hand on the back: where they are while they move, and what
// the engine says of that.
import { effect, signal } from '@preact/signals';
import type { Advice, Back, Design, Hung, Post, Project } from '../engine/wire.gen';
import { SMALL } from '../engine/queue';
import { atHand } from './desk';
import { designOf, withDesign } from './project';
import * as s from './store';

/** A move that is not let go yet, of one project. */
export interface Moving {
  project: Project;
  /** Which post moves, and where all of them are, mm from the left and top as seen from the front. */
  moved: number;
  posts: Post[];
  /** The newest answer for these places, or for those just before. */
  hung?: Hung;
  /** Let go, and waiting for the sheet to show it. */
  done?: boolean;
}

export const moving = signal<Moving | undefined>(undefined);

/** The back as it is while a post moves, until the sheet shows that. */
export function liveBack(): Hung | undefined {
  const m = moving.value;
  return m && m.project === s.asked.value ? m.hung : undefined;
}

/** Forgets a move once the sheet shows it: called once. */
export function followPosts(): () => void {
  return effect(() => {
    const m = moving.value;
    if (m?.done && m.project === s.shown.value?.project) moving.value = undefined;
  });
}

/** Moves one post to a place; the engine may set it on a line of symmetry near by. */
export function movePost(back: Advice, moved: number, to: Post, snap = true): void {
  const project = s.asked.value;
  if (!project) return;
  const before = moving.value?.project === project ? moving.value : undefined;
  const posts = (before?.posts ?? back.posts).map((q, i) => (i === moved ? to : q));
  moving.value = { project, moved, posts, ...(before?.hung ? { hung: before.hung } : {}) };
  void ask(project, posts, snap ? moved : -1);
}

let pending: Promise<void> | undefined;

async function ask(project: Project, posts: Post[], moved: number): Promise<void> {
  const now = (async () => {
    try {
      const got = await atHand.value?.call('hang', { picked: s.picked(project), posts, moved }, { lane: `${SMALL}hang` });
      const m = moving.value;
      if (got && m?.project === project) moving.value = { ...m, hung: got.answer };
    } catch {
      // Overtaken by a newer place, which is answered in its turn.
    }
  })();
  pending = now;
  await now;
}

/** Keeps the posts where they are now: one step that can be undone. */
export async function dropPost(what: string): Promise<void> {
  let seen: typeof pending;
  // A key that is pressed again meanwhile moves on: its answer is the one kept.
  do {
    seen = pending;
    await seen;
  } while (pending !== seen);
  const last = moving.value;
  if (!last || last.done) return;
  if (last.hung && last.project === s.asked.value) {
    const { hand } = last.hung;
    s.change((p) => withBack(p, { hand }), what);
  }
  moving.value = s.asked.value ? { ...last, project: s.asked.value, done: true } : undefined;
}

/** Leaves the posts as they were. */
export function leavePosts(): void {
  moving.value = undefined;
}

/** Changes what is wished of the back; what is undefined goes back to the usual. */
export function withBack(p: Project, change: { [K in keyof Back]?: Back[K] | undefined }): Project {
  const d = designOf(p);
  return d ? withDesign(p, { back: backWith(d, change) }) : p;
}

function backWith(d: Design, change: { [K in keyof Back]?: Back[K] | undefined }): Back {
  const all = Object.entries({ ...d.back, ...change }).filter(([, v]) => v !== undefined);
  return Object.fromEntries(all) as Back;
}
