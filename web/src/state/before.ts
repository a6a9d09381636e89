// Before drawing: the sheet that is opened by the second door, what the engine
// says of the pin that is planned there, and the plan until a drawing is opened.
import { effect, signal, untracked } from '@preact/signals';
import type { Canvas, Opened, PNGFile } from '../engine/wire.gen';
import { SMALL } from '../engine/queue';
import { beforeText, plannedNote } from '../words/before';
import { atHand, sentenceOf } from './desk';
import { asPlanned, firstWish, keptText, planOf, readKept, type Kept, type Wish } from './plan';
import { saveFile } from './save';
import * as s from './store';

/** What is wished for; nothing while the sheet is closed. */
export const wish = signal<Wish | undefined>(undefined);
export const reckoned = signal<{ wish: Wish; canvas: Canvas } | undefined>(undefined);
export const problem = signal('');

export interface Guide {
  wish: Wish;
  about: PNGFile;
  file: Blob;
  url: string;
}

export const guide = signal<Guide | undefined>(undefined);

const KEEP = 'badgewright.plan';

function recall(): Kept | undefined {
  try {
    return readKept(localStorage.getItem(KEEP));
  } catch {
    return undefined;
  }
}

/** The plan that the next drawing starts with. */
export const planned = signal<Kept | undefined>(recall());

function keep(plan: Kept | undefined): void {
  planned.value = plan;
  try {
    if (plan) localStorage.setItem(KEEP, keptText(plan));
    else localStorage.removeItem(KEEP);
  } catch {
    // A full or forbidden store: then it lasts as long as the page.
  }
}

export const forget = () => keep(undefined);

/** Opens the sheet; before the engine has said what is usual, as soon as it has. */
export function openBefore(): void {
  const stop = effect(() => {
    const hello = s.hello.value;
    if (!hello) return;
    untracked(() => {
      if (!wish.value) wish.value = firstWish(hello, s.design.value, planned.value);
      queueMicrotask(() => stop());
    });
  });
}

export function closeBefore(): void {
  wish.value = undefined;
  reckoned.value = undefined;
  problem.value = '';
  dropGuide();
}

/** A choice made in the sheet is a plan for the drawing to come. */
export function wishFor(change: (w: Wish) => Wish): void {
  const now = wish.value;
  if (!now) return;
  wish.value = change(now);
  keep(wish.value);
}

function dropGuide(): void {
  const old = guide.value;
  guide.value = undefined;
  if (old) URL.revokeObjectURL(old.url);
}

/** Let typing settle before the picture follows, ms. */
const SETTLE = 150;

/** Keeps numbers and picture up with what is wished for: called once by the sheet. */
export function followBefore(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const w = wish.value;
    if (!w || !atHand.value) return;
    untracked(() => {
      clearTimeout(timer);
      void reckon(w);
      timer = setTimeout(() => void draw(w), guide.value ? SETTLE : 0);
    });
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}

async function reckon(w: Wish): Promise<void> {
  try {
    const got = await atHand.value?.call('canvas', { plan: planOf(w) }, { lane: `${SMALL}canvas` });
    if (!got || wish.value !== w) return;
    problem.value = '';
    reckoned.value = { wish: w, canvas: got.answer };
  } catch (err) {
    if (wish.value === w) problem.value = sentenceOf(err);
  }
}

/** The guide as it is shown: one sees through it. */
async function draw(w: Wish): Promise<void> {
  const made = await make(w, false);
  if (!made || wish.value !== w) return;
  dropGuide();
  guide.value = { wish: w, ...made, url: URL.createObjectURL(made.file) };
}

async function make(w: Wish, onWhite: boolean): Promise<{ about: PNGFile; file: Blob } | undefined> {
  try {
    const got = await atHand.value?.call('guide', { plan: planOf(w), onWhite }, { lane: onWhite ? 'guide on white' : 'guide' });
    return got?.bytes && { about: got.answer, file: new Blob([got.bytes], { type: 'image/png' }) };
  } catch {
    return undefined; // What is wrong with the plan is said beside it.
  }
}

export async function saveGuide(onWhite: boolean): Promise<void> {
  const w = wish.value;
  if (!w) return;
  const seen = guide.value;
  const made = !onWhite && seen?.wish === w ? seen : await make(w, onWhite);
  if (!made) return;
  keep(w);
  saveFile(made.file, made.about.fileName);
  s.said.value = `Saved ${made.about.fileName}`;
}

/** Takes the numbers along as text. */
export async function copyNumbers(): Promise<boolean> {
  const r = reckoned.value;
  if (!r) return false;
  try {
    await navigator.clipboard.writeText(beforeText(r.canvas, r.wish));
    keep(r.wish);
    s.said.value = 'The numbers are copied.';
    return true;
  } catch {
    return false;
  }
}

/** A drawing that is opened starts as it was planned, once. */
export function takePlan(o: Opened): Opened {
  closeBefore();
  const plan = planned.value;
  if (!plan) return o;
  keep(undefined);
  return asPlanned(o, plan, s.hello.value, plannedNote(plan));
}
