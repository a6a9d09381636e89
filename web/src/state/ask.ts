// Asks the engine for what the project needs, newest wish first.
import { batch, effect, untracked, type Signal } from '@preact/signals';
import type { Engine, NamedFile } from '../engine/client';
import type { DrawingRef, Opened, Project, View } from '../engine/wire.gen';
import { takePlan } from './before';
import { askChoices, choices } from './choices';
import { atHand } from './desk';
import { besideOf, priced } from './items';
import { lookOf } from './look';
import { drawingOf, revisedOf, withDesign, withGround, withOpened } from './project';
import * as s from './store';
import { followThumbs } from './thumbs';
import { whole } from './whole';

/** Longest picture asked for: past this the eye gains nothing on a sheet. */
const PICTURE_MOST = 2048;
const PICTURE_LEAST = 256;

/** Let a wish settle before the slower questions follow it, ms. */
const SETTLE = 120;

let engine: Engine | undefined;
let pictureSide = 1024;

/** The newest answers, on the sheet or waiting for each other. */
let measured: s.Shown | undefined;
let struck: s.Drawn | undefined;

export async function begin(e: Engine): Promise<void> {
  engine = e;
  atHand.value = e;
  e.onState((state) => {
    s.engineState.value = state;
    if (state === 'restarting') s.tell('The engine stopped by a fault of ours.', 'It is starting again; your work is kept.');
  });
  const { answer } = await e.call('hello', {});
  s.hello.value = answer;
}

/** Keeps the sheet up with the project: called once. */
export function follow(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  followThumbs();
  return effect(() => {
    const p = s.asked.value;
    const wantBack = s.turned.value;
    const wantBrought = s.holding.value;
    if (!p || !drawingOf(p)) return;
    const mark = markable(p);
    untracked(() => {
      carry(p);
      if (measured?.project !== p) void check(p);
      if (struck?.project !== p) void picture(p, 'struck');
      if (wantBack && s.back.value?.project !== p) void picture(p, 'back');
      if (wantBrought && s.brought.value?.project !== p) void picture(p, 'drawing');
      if (mark && (s.marked.value?.project !== p || s.marked.value.view !== mark)) void picture(p, mark);
      clearTimeout(timer);
      timer = setTimeout(() => {
        void askBuys(p);
        void askChoices(p);
      }, SETTLE);
    });
  });
}

/** What was found for a project holds for one that differs in its plans alone:
 * nothing of them shows on the pin. */
function carry(p: Project): void {
  const same = <T extends { project: Project }>(a: T | undefined): T | undefined =>
    a && a.project !== p && a.project.order === p.order && a.project.at === p.at ? { ...a, project: p } : a;
  const keep = <T extends { project: Project }>(found: Signal<T | undefined>) => { found.value = same(found.value); };
  measured = same(measured);
  struck = same(struck);
  batch(() => {
    for (const picture of [s.front, s.back, s.brought, s.marked]) keep(picture);
    keep(s.shown);
    keep(s.buys);
    keep(choices);
    keep(priced);
  });
}

/** What is to be marked, where there is something to mark: only a pin that was
 * measured is known to have a colour that may go. */
function markable(p: Project): typeof s.marking.value {
  const mark = s.marking.value;
  const seen = s.shown.value;
  if (mark === 'next') return seen?.project === p && seen.check.next ? mark : undefined;
  return mark && revisedOf(p) ? mark : undefined;
}

/** The sheet says how large its picture is, in device px on the long side. */
export function setPictureSide(px: number): void {
  const want = Math.min(PICTURE_MOST, Math.max(PICTURE_LEAST, Math.ceil(px / 128) * 128));
  if (want === pictureSide) return;
  pictureSide = want;
  const p = s.asked.value;
  if (p && drawingOf(p)) void picture(p, 'struck');
}

async function check(p: Project): Promise<void> {
  const stopper = new AbortController();
  const opts = { lane: 'check', signal: stopper.signal, onProgress: report('Measuring', () => stopper.abort()) };
  const got = await quietly(p, (e, q) => e.call('check', { picked: s.picked(q) }, opts));
  s.work.value = undefined;
  if (!got || !current(got.project)) return;
  measured = { project: got.project, check: whole(got.value.answer) };
  settle();
}

async function picture(p: Project, view: View): Promise<void> {
  const got = await quietly(p, (e, q) =>
    e.call('picture', { picked: s.picked(q), view, longSide: pictureSide }, { lane: `picture-${view}` }));
  if (!got?.value.bytes || !current(got.project)) return;
  const { w, h } = got.value.answer;
  const pixels = new ImageData(new Uint8ClampedArray(got.value.bytes.buffer, got.value.bytes.byteOffset, 4 * w * h), w, h);
  const drawn = { project: got.project, view, shot: { picture: got.value.answer, pixels } };
  if (view === 'back') s.back.value = drawn;
  else if (view === 'drawing') s.brought.value = drawn;
  else if (view === 'next' || view === 'changed') s.marked.value = drawn;
  else {
    struck = drawn;
    settle();
  }
}

/** Puts the newest picture and the newest check on the sheet together, once both are of one look. */
function settle(): void {
  const [m, d] = [measured, struck];
  if (!m || !d || lookOf(m.project) !== lookOf(d.project)) return;
  s.show(m, d);
}

async function askBuys(p: Project): Promise<void> {
  if (s.asked.value !== p || s.dragged.value || s.buys.value?.project === p) return;
  const got = await quietly(p, async (e, q) => e.call('buys', { picked: s.picked(q), ...(await besideOf(q)) }, { lane: 'buys' }));
  if (got && current(got.project)) s.buys.value = { project: got.project, buys: got.value.answer };
}

export async function touch(x: number, y: number) {
  const p = s.asked.value;
  if (!p) return undefined;
  return (await quietly(p, (e, q) => e.call('touch', { picked: s.picked(q), x, y }, { lane: 'touch' })))?.value.answer;
}

// An answer counts when nothing was undone past it: dragging may run ahead.
function current(p: Project): boolean {
  return s.asked.value === p || s.dragged.value !== undefined;
}

function report(doing: string, stop: () => void) {
  return (share: number, step: string) => {
    s.work.value = share >= 1 ? undefined : { doing: step || doing, share, stop };
  };
}

type Answer<T> = { project: Project; value: T };

/** Runs a call; an answer overtaken by a newer wish is dropped without a word. */
async function quietly<T>(p: Project, call: (e: Engine, p: Project) => Promise<T>): Promise<Answer<T> | undefined> {
  if (!engine) return undefined;
  try {
    return { project: p, value: await call(engine, p) };
  } catch (err) {
    complain(err);
    return undefined;
  }
}

export type Files = readonly [NamedFile, NamedFile?];

/** Has the engine open a file, or two that are the lines and the colours of one
 * drawing; a refusal is told. */
export async function bring(files: Files): Promise<Opened | undefined> {
  if (!engine) return undefined;
  s.note.value = undefined;
  const stopper = new AbortController();
  const doing = `Opening ${files[0].name}`;
  const stop = () => stopper.abort();
  s.work.value = { doing, share: 0, stop };
  try {
    const o = await engine.openFiles(files, 'auto', { signal: stopper.signal, onProgress: report(doing, stop) });
    s.opened.value = { ...s.opened.value, [o.drawing]: o };
    return o;
  } catch (err) {
    complain(err);
    return undefined;
  } finally {
    s.work.value = undefined;
  }
}

/** Opens a drawing onto the sheet; when it is refused, what was open stays. */
export async function open(files: Files, as?: string): Promise<boolean> {
  const here = s.here();
  const brought = await bring(files);
  if (!brought) return false;
  const o = as === undefined ? takePlan(brought) : brought;
  here(() => place(o, as));
  if (as === undefined && o.notes.length > 0) s.tell(`${o.design.name} is on the sheet.`, o.notes.join(' '));
  return true;
}

/** Lays a new version of the drawing on the design: what was set carries over where it fits. */
export async function revise(files: Files): Promise<void> {
  const o = await bring(files);
  if (o) await layOn(o.drawing, `Brought ${o.design.drawings[0]?.fileName ?? 'a new version'}`);
}

/** Brings back a version of the drawing that another took the place of. */
export function bringBack(ref: DrawingRef): Promise<void> {
  return layOn(ref.id, `Went back to version ${ref.revision}`);
}

async function layOn(drawing: string, what: string): Promise<void> {
  const p = s.asked.value;
  if (!p) return;
  const here = s.here();
  const got = await quietly(p, (e, q) => e.call('revise', { picked: s.picked(q), drawing }));
  if (!got) return;
  const { design, words, lost, places } = got.value.answer;
  s.spot.value = undefined;
  s.turned.value = false;
  here(() => s.change((q) => withDesign(q, design), what));
  s.marking.value = places > 0 ? 'changed' : undefined;
  s.tell(words, lost.join(' '));
}

function place(o: Opened, as: string | undefined): void {
  const blank = s.hello.value?.blank;
  if (!blank) return;
  s.spot.value = undefined;
  s.turned.value = false;
  if (s.history.value) s.change((p) => withOpened(p, o, as, true), `Opened ${as ?? o.design.name}`);
  else s.start(withOpened(blank, o, as, false));
}

/** Looks at the open drawing again with another choice of background. */
export async function chooseGround(ground: Opened['ground']): Promise<void> {
  const p = s.asked.value;
  const id = p && drawingOf(p);
  if (!p || !id) return;
  const name = s.design.value?.name;
  const here = s.here();
  const got = await quietly(p, (e) => e.call('ground', { drawing: id, ground }, { lane: 'ground' }));
  if (!got) return;
  s.opened.value = { ...s.opened.value, [id]: got.value.answer };
  here(() => s.change((q) => withGround(q, got.value.answer, name), 'Background looked at again'));
}

function field(err: unknown, key: string): string {
  const v = typeof err === 'object' && err !== null ? (err as Record<string, unknown>)[key] : undefined;
  return typeof v === 'string' ? v : '';
}

function complain(err: unknown): void {
  const kind = field(err, 'kind');
  if (kind === 'stopped' || kind === 'superseded') return;
  s.tell(field(err, 'what') || field(err, 'message') || 'Something went wrong.', field(err, 'do'));
}
