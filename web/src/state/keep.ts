// Keeps what is made in the browser's own database as it changes, and lays what
// was kept on the sheet again.
import { batch, effect, signal, untracked } from '@preact/signals';
import type { Project } from '../engine/wire.gen';
import { DEMOS } from '../words/demos';
import { atHand, sentenceOf } from './desk';
import { DEMO_ID, keepFlag } from './first';
import { thumbOf } from './keepThumb';
import { askFor, hold, letGo, whenAsked } from './keepLock';
import { copyName, freshID, isToday, nameOf, named, needsOf, onlyLooked, type Kept, type KeptDrawing, type Meta, type Work } from './keepRecord';
import * as store from './keepStore';
import { photosNamed, takeIn, type Photo } from './photos';
import * as s from './store';
import { begin, replace } from './history';

/** How it stands with what is on the sheet. */
export type Standing =
  /** Nothing was done yet that would be worth keeping. */
  | { kind: 'nothing' }
  | { kind: 'kept' }
  /** Another tab keeps this project: what is changed here is not kept. */
  | { kind: 'elsewhere' }
  | { kind: 'refused'; full: boolean };

export const standing = signal<Standing>({ kind: 'nothing' });
/** The project on the sheet, once it is kept. */
export const current = signal<Meta | undefined>(undefined);
/** All that are kept, the one changed last first, with those just put away. */
export const projects = signal<readonly Meta[]>([]);

/** A change is kept after this time, ms: steps that come together are kept together. */
const SETTLE = 250;

/** What is on the sheet as it was kept last. */
interface Last {
  history: typeof s.history.value;
  front: typeof s.front.value;
}

let last: Last = { history: undefined, front: undefined };
/** Drawings and pictures that are kept with what is on the sheet. */
let stored = new Set<string | Photo>();
/** The picture that the small one was made of last. */
let pictured: Last['front'];
let timer: ReturnType<typeof setTimeout> | undefined;
let writing: Promise<void> = Promise.resolve();
let following = false;

const unnamed = () => s.hello.value?.blank.order.name ?? 'New order';
const now = (): Last => ({ history: s.history.value, front: s.front.value });
const same = (a: Last, b: Last) => a.history === b.history && a.front === b.front;

/** Begins to keep: called once the page stands. */
export function follow(): void {
  if (following) return;
  following = true;
  effect(() => {
    const at = now();
    untracked(() => {
      if (!same(at, last)) timer ??= setTimeout(() => void flush(), SETTLE);
    });
  });
  addEventListener('pagehide', () => void flush());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void flush();
  });
  whenAsked((id) => void yieldUp(id));
  void refresh().then(() => store.tidy(Date.now())).catch(refused);
}

/** Keeps what was not kept yet; resolves when it is. */
export function flush(): Promise<void> {
  clearTimeout(timer);
  timer = undefined;
  writing = writing.then(write).catch(refused);
  return writing;
}

async function write(): Promise<void> {
  const is = now();
  const h = is.history;
  if (!h || same(is, last) || standing.value.kind === 'elsewhere') return;
  if (!current.value && onlyLooked(h, Object.values(DEMOS), DEMO_ID)) return;
  const before = current.value ?? { id: freshID(), name: '', changed: 0, revision: 0, uses: [] };
  const changed = h === last.history ? before.changed : Date.now();
  const meta: Meta = { ...before, name: nameOf(h.now, unnamed()), changed, revision: before.revision + 1, ...needsOf(h) };
  const drawings = drawingsOf(meta.uses.filter((id) => !stored.has(id)));
  const pictures = photosNamed(meta.pictures ?? []).filter((p) => !stored.has(p));
  if (!current.value && !(await hold(meta.id, lost))) return;
  if (!(await store.put({ meta, work: workOf(meta.id, is), drawings, pictures }, before.revision))) {
    lost();
    return;
  }
  for (const d of drawings) stored.add(d.id);
  for (const p of pictures) stored.add(p);
  last = is;
  batch(() => {
    current.value = meta;
    standing.value = { kind: 'kept' };
    projects.value = [meta, ...projects.value.filter((m) => m.id !== meta.id)];
  });
  keepFlag(meta.id);
  if (before.revision === 0) void askToStay();
  if (is.front !== pictured || before.revision === 0) void picture(meta.id, is.front).catch(refused);
}

/** Keeps the small picture, which browsers make when they find the time: what was made does not
 * wait for it. */
async function picture(id: string, front: Last['front']): Promise<void> {
  pictured = front;
  const thumb = await thumbOf(front);
  if (!thumb || pictured !== front) return;
  await store.amend(id, (m) => ({ ...m, thumb }));
  if (current.value?.id === id) current.value = { ...current.value, thumb };
  projects.value = projects.value.map((m) => (m.id === id ? { ...m, thumb } : m));
}

const workOf = (id: string, { history }: Last): Work => {
  if (!history) throw new Error('nothing to keep');
  return { id, format: history.now.format, history };
};

function drawingsOf(ids: readonly string[]): KeptDrawing[] {
  return ids.flatMap((id) => {
    const open = atHand.value?.keptOf(id);
    const opened = s.opened.value[id];
    return open ? [opened ? { id, open, opened } : { id, open }] : [];
  });
}

/** What is kept may be thrown out by the browser when space is short, unless it
 * says otherwise; asked once, when there is something to lose. */
async function askToStay(): Promise<void> {
  const { storage } = navigator;
  if (storage?.persist && !(await storage.persisted())) await storage.persist();
}

function refused(err: unknown): void {
  const full = err instanceof DOMException && err.name === 'QuotaExceededError';
  if (standing.value.kind !== 'refused') console.warn(sentenceOf(err));
  standing.value = { kind: 'refused', full };
}

function lost(): void {
  standing.value = { kind: 'elsewhere' };
}

async function yieldUp(id: string): Promise<void> {
  if (current.value?.id !== id || standing.value.kind === 'elsewhere') return;
  await flush();
  lost();
  letGo();
}

// ---- what was kept comes back

/** Lays the last project on the sheet; false when there is none. */
export async function resume(id: string): Promise<boolean> {
  try {
    const kept = (await here(id)) ?? (await here((await store.list()).find((m) => m.gone === undefined)?.id));
    if (!kept) return false;
    await take(kept);
    follow();
    return true;
  } catch (err) {
    refused(err);
    return false;
  }
}

async function here(id: string | undefined): Promise<Kept | undefined> {
  const kept = id ? await store.load(id) : undefined;
  return kept && kept.meta.gone === undefined ? kept : undefined;
}

async function take(kept: Kept, own?: boolean): Promise<void> {
  const work = await today(kept.work);
  const ours = own ?? (await hold(kept.meta.id, lost));
  lay({ ...kept, work });
  standing.value = { kind: ours ? 'kept' : 'elsewhere' };
}

/** Brings work of an older format forward; of its history the last state is kept. */
async function today(work: Work): Promise<Work> {
  if (isToday(work) || !atHand.value) return work;
  const bytes = new TextEncoder().encode(JSON.stringify(work.history.now));
  const { answer } = await atHand.value.call('forward', {}, { bytes });
  return { ...work, history: begin(answer.project) };
}

function lay({ meta, work, drawings, pictures }: Kept): void {
  const opened = { ...s.opened.value };
  for (const d of drawings) {
    atHand.value?.takeBack(d.open);
    if (d.opened) opened[d.id] = d.opened;
  }
  stored = new Set<string | Photo>([...drawings.map((d) => d.id), ...pictures]);
  batch(() => {
    clearSheet();
    takeIn(pictures);
    s.opened.value = opened;
    s.history.value = work.history;
    current.value = meta;
    s.work.value = { doing: `Opening ${meta.name}`, share: 0 }; // until it is measured
  });
  last = now();
  pictured = undefined;
  keepFlag(meta.id);
}

/** Puts away what was being done at the sheet. */
function clearSheet(): void {
  s.dragged.value = undefined;
  s.spot.value = undefined;
  s.marking.value = undefined;
  s.turned.value = false;
  s.holding.value = false;
  s.note.value = undefined;
}

/** Lets go of the project on the sheet, once it is kept. */
export async function leave(): Promise<void> {
  await flush();
  letGo();
  batch(() => {
    current.value = undefined;
    if (standing.value.kind !== 'refused') standing.value = { kind: 'nothing' };
  });
  stored = new Set();
  last = now();
}

/** Lays a project that was not kept before on the sheet. What was there is kept; where the
 * browser keeps nothing, it stays in the undo history. */
export function layNew(project: Project): void {
  batch(() => {
    clearSheet();
    if (standing.value.kind === 'refused') s.change(() => project, 'Opened a project');
    else s.start(project);
  });
}

export async function open(id: string): Promise<void> {
  await guarded(async () => {
    const kept = await here(id);
    if (!kept) {
      s.tell('This project is no longer kept here.', 'It was put away in another tab.');
      return refresh();
    }
    await leave();
    await take(kept);
  });
}

/** Goes on here with what another tab has kept; what was changed here meanwhile is kept as a copy. */
export async function goOnHere(): Promise<void> {
  const id = current.value?.id;
  if (!id) return;
  await guarded(async () => {
    await setAside();
    askFor(id);
    const ours = (await hold(id, lost, { wait: 3000 })) || (await hold(id, lost, { steal: true }));
    const kept = await here(id);
    if (kept) await take(kept, ours);
    await refresh();
  });
}

/** Keeps what was changed here, while another tab had the project, as a project of its own. */
async function setAside(): Promise<void> {
  const is = now();
  if (!is.history || is.history === last.history) return;
  const id = freshID();
  const name = copyName(nameOf(is.history.now, unnamed()), projects.value.map((m) => m.name));
  const history = replace(is.history, named(is.history.now, name), `Called ${name}`);
  const thumb = current.value?.thumb;
  const meta: Meta = { id, name, changed: Date.now(), revision: 1, ...needsOf(history), ...(thumb ? { thumb } : {}) };
  await store.put({ meta, work: workOf(id, { ...is, history }), drawings: drawingsOf(meta.uses), pictures: photosNamed(meta.pictures ?? []) }, 0);
}

/** Keeps what is on the sheet as a project of its own, and goes on with that. */
export async function openCopy(): Promise<void> {
  const h = s.history.value;
  if (!h) return;
  const name = copyName(nameOf(h.now, unnamed()), projects.value.map((m) => m.name));
  letGo();
  batch(() => {
    s.history.value = replace(h, named(h.now, name), `Called ${name}`);
    current.value = undefined;
    standing.value = { kind: 'nothing' };
  });
  await flush();
}

/** Reads the list of projects again. */
export async function refresh(): Promise<void> {
  projects.value = await store.list();
}

export async function guarded(act: () => Promise<void>): Promise<void> {
  try {
    await act();
  } catch (err) {
    refused(err);
  }
}
