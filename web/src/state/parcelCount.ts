// The count in hand. Taps stand here at once and go into the project when the
// thumb rests, so that each is no step of its own and the sheet is not asked
// anew for every piece.
import { computed, signal } from '@preact/signals';
import type { FlawKind, FlawedPiece, Parcel } from '../engine/wire.gen';
import { parcelsOf, tapped, withFlaw, withLast, withParcel, type Tapped } from './parcel';
import * as s from './store';
import { plural } from '../words/words';

interface Draft {
  /** The parcel in the project that these taps continue. */
  base: Parcel;
  now: Parcel;
  /** What stood before each piece, the last one last. */
  before: readonly Parcel[];
  /** Pieces counted, less those taken back, since the project knows of it. */
  since: number;
}

const draft = signal<Draft | undefined>(undefined);

/** Which parcel and which of its versions is in hand. */
export const chosen = signal<string | undefined>(undefined);
export const inHand = signal(0);
/** The last piece waits for the name of its fault. */
export const naming = signal(false);

const kept = computed(() => {
  const all = s.asked.value ? parcelsOf(s.asked.value) : [];
  return all.find((p) => p.id === chosen.value) ?? all.at(-1);
});

/** Taps count only while the project holds what they continue: after an undo
 * the project is right. */
const live = computed(() => (draft.value && draft.value.base === kept.value ? draft.value : undefined));

export const parcel = computed(() => live.value?.now ?? kept.value);
export const rowAt = computed(() => Math.min(inHand.value, (parcel.value?.rows.length ?? 1) - 1));
export const canUndo = computed(() => (live.value?.before.length ?? 0) > 0);

/** A thumb that rests this long has put a pile down, ms. */
const REST = 1500;

/** Enough to take back a slip noticed late. */
const DEEPEST = 100;

let timer: ReturnType<typeof setTimeout> | undefined;

function put(now: Parcel, before: readonly Parcel[], more: number): void {
  const base = kept.value;
  if (!base) return;
  draft.value = { base, now, before: before.slice(-DEEPEST), since: (live.value?.since ?? 0) + more };
  clearTimeout(timer);
  timer = setTimeout(flush, REST);
}

/** Puts what was counted into the project: one step that can be undone. */
export function flush(): void {
  clearTimeout(timer);
  const d = live.value;
  if (!d || d.now === d.base) return;
  const what = d.since > 0 ? `Counted ${plural(d.since, 'piece')}` : 'Corrected the count';
  s.change((p) => withParcel(p, d.now), what);
  draft.value = { ...d, base: d.now, since: 0 };
}

export function tap(grade: Tapped): void {
  const now = parcel.value;
  if (!now) return;
  naming.value = grade !== 'first';
  put(tapped(now, rowAt.value, grade), [...(live.value?.before ?? []), now], 1);
}

export function nameFlaw(flaw: FlawKind): void {
  const now = parcel.value;
  naming.value = false;
  if (now) put(withFlaw(now, rowAt.value, flaw), live.value?.before ?? [], 0);
}

export function takeBack(): void {
  const d = live.value;
  const last = d?.before.at(-1);
  if (!d || !last) return;
  naming.value = false;
  // The version whose piece is taken back comes into hand.
  const at = last.rows.findIndex((r, i) => r !== d.now.rows[i]);
  if (at >= 0) inHand.value = at;
  put(last, d.before.slice(0, -1), -1);
}

/** The piece counted last of the version in hand, when it is flawed. */
export const lastFlawed = computed<FlawedPiece | undefined>(() => parcel.value?.rows[rowAt.value]?.flawed?.at(-1));

export function withPhoto(id: string): void {
  const now = parcel.value;
  if (now) put(withLast(now, rowAt.value, (f) => ({ photos: [...(f.photos ?? []), id] })), live.value?.before ?? [], 0);
}

/** All that came is counted; or the count goes on after all. */
export function finish(complete: boolean): void {
  const now = parcel.value;
  naming.value = false;
  if (now) put({ ...now, complete }, [...(live.value?.before ?? []), now], 0);
}

/** A change that is no tap: a day, a share, a number typed. */
export function setParcel(change: (p: Parcel) => Parcel, what: string): void {
  flush();
  const now = parcel.value;
  if (!now) return;
  draft.value = undefined;
  naming.value = false;
  s.change((p) => withParcel(p, change(now)), what);
}

export function choose(id: string | undefined): void {
  flush();
  draft.value = undefined;
  naming.value = false;
  inHand.value = 0;
  chosen.value = id;
}

/** Nothing counted is lost when the page is put away. */
export function flushOnLeave(): () => void {
  const away = () => document.visibilityState === 'hidden' && flush();
  document.addEventListener('visibilitychange', away);
  addEventListener('pagehide', flush);
  return () => {
    flush();
    document.removeEventListener('visibilitychange', away);
    removeEventListener('pagehide', flush);
  };
}
