// The look: the struck pin on cloth, as a lens sees it and as an eye sees it
// from a distance. Each picture keeps what it was asked of.
import { effect, signal, untracked } from '@preact/signals';
import type { Engine } from '../engine/client';
import type { Length, Project } from '../engine/wire.gen';
import { atHand } from './desk';
import { gaze, sightOpen, type Gaze } from './eye';
import { drawingOf } from './project';
import * as s from './store';

export interface Looked {
  project: Project;
  gaze: Gaze;
  shot: s.Shot;
  /** Of the pin that is seen. */
  size: Length;
  /** CSS px to a picture px are these over `perMM`: working px to a mm, and picture px to a working px. */
  scale: number;
}

/** What a lens sees, and what an eye sees. */
export const plainLook = signal<Looked | undefined>(undefined);
export const eyeLook = signal<Looked | undefined>(undefined);
/** How far the look that is asked for has come, 0..1; nothing while none is. */
export const lookShare = signal<number | undefined>(undefined);
/** Why there is none. */
export const lookProblem = signal('');

/** Long side of the pictures, device px. */
export const lookSide = signal(0);

const LEAST = 192;
const MOST = 1600;

/** The section says how long its pictures are, CSS px. */
export function setLookSide(css: number): void {
  lookSide.value = css > 0 ? Math.min(MOST, Math.max(LEAST, Math.ceil((css * devicePixelRatio) / 64) * 64)) : 0;
}

/** Let a wish settle before pictures follow, ms. */
const SETTLE = 150;

/** Keeps the look up with the project: called once. */
export function followLook(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopper: AbortController | undefined;
  const stop = effect(() => {
    const p = s.asked.value;
    const g = gaze.value;
    const engine = atHand.value;
    const side = lookSide.value;
    const ready = sightOpen.value && side > 0 && !s.dragged.value && s.shown.value?.project === p;
    if (!p || !g || !engine || !ready || !drawingOf(p)) return;
    untracked(() => {
      clearTimeout(timer);
      stopper?.abort();
      const mine = (stopper = new AbortController());
      timer = setTimeout(() => void look({ engine, project: p, gaze: g, side, signal: mine.signal }), SETTLE);
    });
  });
  return () => {
    clearTimeout(timer);
    stopper?.abort();
    stop();
  };
}

interface Wish {
  engine: Engine;
  project: Project;
  gaze: Gaze;
  side: number;
  signal: AbortSignal;
}

async function look(w: Wish): Promise<void> {
  try {
    lookProblem.value = '';
    lookShare.value = 0;
    const plain = plainLook.peek();
    if (plain?.project !== w.project || plain.gaze.cloth !== w.gaze.cloth || sideOf(plain) !== w.side) plainLook.value = await picture(w, true);
    else if (plain.gaze !== w.gaze) plainLook.value = { ...plain, gaze: w.gaze };
    eyeLook.value = await picture(w, false);
  } catch (err) {
    if (!w.signal.aborted && !overtaken(err)) lookProblem.value = 'The look could not be drawn.';
  } finally {
    if (!w.signal.aborted) lookShare.value = undefined;
  }
}

const overtaken = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && (err.kind === 'superseded' || err.kind === 'stopped');

const sideOf = (l: Looked) => Math.max(l.shot.picture.w, l.shot.picture.h);

async function picture(w: Wish, plain: boolean): Promise<Looked> {
  const { cloth, viewing } = w.gaze;
  const onProgress = (share: number) => {
    if (!w.signal.aborted) lookShare.value = (share + (plain ? 0 : 1)) / 2;
  };
  const check = s.shown.peek()?.check;
  const { answer, bytes } = await w.engine.call('look', { picked: s.picked(w.project), longSide: w.side, cloth, viewing, plain }, {
    lane: plain ? 'look plain' : 'look', signal: w.signal, onProgress,
  });
  if (!bytes || !check) throw new Error('The engine drew nothing.');
  const pixels = new ImageData(new Uint8ClampedArray(bytes.buffer, bytes.byteOffset, 4 * answer.w * answer.h), answer.w, answer.h);
  return { project: w.project, gaze: w.gaze, shot: { picture: answer, pixels }, size: check.shown.longest, scale: check.scale };
}

/** The picture at true size, CSS px. */
export function trueSizeOf(l: Looked, perMM: number): { w: number; h: number } {
  const k = perMM / (l.shot.picture.scale * l.scale);
  return { w: l.shot.picture.w * k, h: l.shot.picture.h * k };
}
