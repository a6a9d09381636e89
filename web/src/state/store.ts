// What the page knows. The asked-for project and the shown one are two fields,
// so that an old picture never wears a new label.
import { batch, computed, signal } from '@preact/signals';
import type { EngineState } from '../engine/client';
import type { Buys, Check, Gap, Hello, LetterMark, Opened, Picked, Picture, Project, View } from '../engine/wire.gen';
import { withColourList } from './colouring';
import { begin, redo, replace, turn, undo, type History } from './history';
import type { Under } from './hands';
import type { LineDraft } from './line';
import { designOf, pickedOf, versionOf, withPlace, type Place } from './project';

export interface Shot {
  picture: Picture;
  pixels: ImageData;
}

/** Everything that was found for one project value. */
export interface Shown {
  project: Project;
  check: Check;
}

export interface Drawn {
  project: Project;
  view: View;
  shot: Shot;
}

/** What an opened drawing said of itself, by the drawing's name in the engine. */
export type OpenedBy = Readonly<Record<string, Opened>>;

export interface Note {
  what: string;
  do: string;
  calm: boolean;
}

export interface Work {
  doing: string;
  share: number;
  /** Missing for the few steps that cannot be stopped. */
  stop?: () => void;
}

/** What is being done at a place of the sheet, px. */
export type Spot = { x: number; y: number } & (
  | { kind: 'flat'; flat: number; under?: Under }
  /** Background behind a line that does not close. */
  | { kind: 'open'; under: Under; gap: Gap }
  | { kind: 'finding'; index: number }
  /** What is not read there, or two colours that meet; by its place in their list. */
  | { kind: 'unread' | 'pair'; index: number }
  | { kind: 'line'; draft: LineDraft }
);

const NOWHERE: Place = { design: 0, version: 0 };

export const hello = signal<Hello | undefined>(undefined);
export const history = signal<History<Project> | undefined>(undefined);
/** A value being dragged; it becomes a step of the history when let go. */
export const dragged = signal<Project | undefined>(undefined);
export const shown = signal<Shown | undefined>(undefined);
export const front = signal<Drawn | undefined>(undefined);
export const back = signal<Drawn | undefined>(undefined);
export const brought = signal<Drawn | undefined>(undefined);
/** What is marked on the pin: see `marking`. */
export const marked = signal<Drawn | undefined>(undefined);
export const buys = signal<{ project: Project; buys: Buys } | undefined>(undefined);
export const opened = signal<OpenedBy>({});
export const note = signal<Note | undefined>(undefined);
export const work = signal<Work | undefined>(undefined);
export const engineState = signal<EngineState>('starting');
export const turned = signal(false);
export const holding = signal(false);
/** What is to be marked on the pin: where a colour would be lost with one enamel
 * fewer, or where the drawing differs from the one before it. */
export const marking = signal<'next' | 'changed' | undefined>(undefined);
export const spot = signal<Spot | undefined>(undefined);
/** Which recipe is pointed at in the list of lines made by hand. */
export const pointed = signal<number | undefined>(undefined);
/** Which marked capital is pointed at in their list. */
export const pointedLetter = signal<LetterMark | undefined>(undefined);
export const said = signal('');

export const asked = computed(() => dragged.value ?? history.value?.now);
/** Which version of which design is on the sheet. */
export const at = computed<Place>(() => (asked.value ? pickedOf(asked.value) : NOWHERE));
export const design = computed(() => (asked.value ? designOf(asked.value) : undefined));
export const version = computed(() => (asked.value ? versionOf(asked.value) : undefined));
export const shownDesign = computed(() => (shown.value ? designOf(shown.value.project) : undefined));
export const shownVersion = computed(() => (shown.value ? versionOf(shown.value.project) : undefined));
export const plating = computed(() => hello.value?.platings.find((p) => p.id === shownVersion.value?.plating));

/** True while the sheet still shows an earlier wish. */
export const behind = computed(() => asked.value !== undefined && shown.value?.project !== asked.value);

/** The version on the sheet, for the engine. */
export function picked(project: Project): Picked {
  return pickedAt(project, pickedOf(project));
}

/** A version for the engine. The maker's list is large and goes only with the
 * one question that is about it; plans are not for the pin's program. */
export function pickedAt(project: Project, { design, version }: Place): Picked {
  const { plans: _, ...rest } = withColourList(project, undefined);
  return { project: rest, design, version };
}

/** Puts what was found and its picture on the sheet together. */
export function show(found: Shown, drawn: Drawn): void {
  batch(() => {
    shown.value = found;
    front.value = drawn;
  });
}

/** One step that can be undone; `what` says it in words. */
export function change(make: (p: Project) => Project, what: string): void {
  const h = history.value;
  if (!h) return;
  dragged.value = undefined;
  history.value = replace(h, make(h.now), what);
  said.value = what;
}

/** Lays another version on the sheet: no step, and nothing to undo. */
export function turnTo(place: Place): void {
  const h = history.value;
  if (!h) return;
  const { design, version } = pickedOf(h.now);
  if (design === place.design && version === place.version) return;
  batch(() => {
    clearSheet();
    history.value = turn(h, withPlace(h.now, place));
  });
  const d = designOf(h.now, place);
  said.value = `On the sheet: ${d?.name ?? ''}, ${versionOf(h.now, place)?.name ?? ''}`;
}

/** Puts away what speaks of the pin that was on the sheet. */
export function clearSheet(): void {
  dragged.value = spot.value = marking.value = pointed.value = pointedLetter.value = undefined;
  turned.value = holding.value = false;
}

/** Returns how to do something later to the version that is on the sheet now,
 * whatever lies there by then; nothing is done to one that is gone. */
export function here(): (act: () => void) => void {
  const p = asked.value;
  const id = (q: Project, place: Place) => [designOf(q, place)?.id, versionOf(q, place)?.id].join();
  const mine = p && pickedOf(p);
  return (act) => {
    const h = history.value;
    if (!p || !mine || !h || id(h.now, mine) === id(h.now, pickedOf(h.now))) return act();
    if (id(h.now, mine) !== id(p, mine)) return;
    const back = pickedOf(h.now);
    batch(() => {
      history.value = turn(h, withPlace(h.now, mine));
      act();
      if (history.value) history.value = turn(history.value, withPlace(history.value.now, back));
    });
  };
}

/** Shows a value while it is dragged, without a step. */
export function drag(make: (p: Project) => Project): void {
  const h = history.value;
  if (h) dragged.value = make(h.now);
}

export function letGo(what: string): void {
  const d = dragged.value;
  if (d) change(() => d, what);
}

export function start(p: Project): void {
  history.value = begin(p);
}

/** A step back or forward lies where it was made: what is on the sheet may change with it. */
function step(to: History<Project>): void {
  const [was, is] = [at.peek(), pickedOf(to.now)];
  batch(() => {
    if (was.design === is.design && was.version === is.version) spot.value = undefined;
    else clearSheet();
    history.value = to;
  });
}

export function goBack(): void {
  const h = history.value;
  const last = h?.past.at(-1);
  if (!h || !last) return;
  step(undo(h));
  said.value = `Undone: ${last.what}`;
}

export function goForward(): void {
  const h = history.value;
  const next = h?.future[0];
  if (!h || !next) return;
  step(redo(h));
  said.value = `Done again: ${next.what}`;
}

export function tell(what: string, todo = '', calm = true): void {
  note.value = { what, do: todo, calm };
}
