// How the pin is looked at, and what the engine says is seen of it so.
import { computed, effect, signal, untracked, type Signal } from '@preact/signals';
import { SMALL } from '../engine/queue';
import type { Engine } from '../engine/client';
import type { Glance, Neighbours, Project, ReadingAnswer, RGB8, Thresholds, Viewing } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import { wayToAsk, type Way } from './eyeWay';
import { drawingOf } from './project';
import * as s from './store';
import { typed, type Outcome } from './typed';

/** How a pin is looked at. */
export interface Gaze {
  viewing: Viewing;
  thresholds: Thresholds;
  cloth: RGB8;
}

/** Of the distances of the job the one that is asked about first: on the lapel. */
const FIRST_DISTANCE = 1;

const wished = signal<Gaze | undefined>(undefined);

/** How it is looked at now; what is usual until the person says otherwise. */
export const gaze = computed((): Gaze | undefined => wished.value ?? usualGaze.value);

export const usualGaze = computed((): Gaze | undefined => {
  const eye = s.hello.value?.eye;
  const from = eye?.distances[FIRST_DISTANCE] ?? eye?.distances[0];
  const cloth = eye?.cloths[0];
  return eye && from && cloth && { viewing: { distance: from.mm, acuity: eye.acuity }, thresholds: eye.thresholds, cloth: cloth.rgb };
});

export function lookSo(change: Partial<Gaze>): void {
  const now = gaze.peek();
  if (now) wished.value = { ...now, ...change };
}

/** An answer, and what it was asked of. */
export interface Told<T> {
  project: Project;
  gaze: Gaze;
  answer: T;
  /** What recipes build was left out. */
  asDrawn: boolean;
}

export const glance = signal<Told<Glance> | undefined>(undefined);
export const reading = signal<Told<ReadingAnswer> | undefined>(undefined);
export const neighbours = signal<Told<Neighbours> | undefined>(undefined);

/** The section is open: what is only seen there is asked for only then. */
export const sightOpen = signal(false);

/** What is not read is marked on the pin. */
export const marksOn = signal(false);

/** True for an answer to an earlier wish. */
export function isLate(told: Pick<Told<unknown>, 'project' | 'gaze'> | undefined): boolean {
  return told !== undefined && (told.project !== s.asked.value || told.gaze !== gaze.value);
}

type Ask<T> = (e: Engine, p: Project, g: Gaze, asDrawn: boolean) => Promise<T>;

/** One thing to be kept up with the project and the gaze. */
class Question<T> {
  private last: Omit<Told<T>, 'answer'> | undefined;

  constructor(private readonly told: Signal<Told<T> | undefined>, private readonly quick: boolean, private readonly ask: Ask<T>) {}

  follow(engine: Engine, project: Project, g: Gaze, moment: { seen: boolean; dragging: boolean }): void {
    const way: Way = wayToAsk(project, this.told.peek(), moment);
    if (way === 'wait' || (way === 'as-drawn' && !this.quick)) return;
    const asDrawn = way === 'as-drawn';
    const { last } = this;
    if (last && last.project === project && last.gaze === g && last.asDrawn === asDrawn) return;
    const mine = { project, gaze: g, asDrawn };
    this.last = mine;
    this.ask(engine, project, g, asDrawn)
      .then((answer) => {
        if (s.asked.peek() === project || s.dragged.peek()) this.told.value = { ...mine, answer };
      })
      // Overtaken, or the check has said already what is wrong.
      .catch(() => {
        if (this.last === mine) this.last = undefined;
      });
  }
}

const questions = {
  glance: new Question<Glance>(glance, true, async (e, p, { viewing, thresholds }, asDrawn) =>
    (await e.call('glance', { picked: s.picked(p), viewing, thresholds, asDrawn }, { lane: `${SMALL}glance` })).answer),
  reading: new Question<ReadingAnswer>(reading, true, async (e, p, { viewing, thresholds, cloth }, asDrawn) =>
    (await e.call('reading', { picked: s.picked(p), viewing, thresholds, cloth, asDrawn }, { lane: `${SMALL}reading` })).answer),
  neighbours: new Question<Neighbours>(neighbours, false, async (e, p, { thresholds }) =>
    (await e.call('neighbours', { picked: s.picked(p), thresholds }, { lane: `${SMALL}neighbours` })).answer),
};

/** Keeps what is seen up with the project: called once. */
export function followEye(): () => void {
  return effect(() => {
    const p = s.asked.value;
    const g = gaze.value;
    const engine = atHand.value;
    const moment = { seen: s.shown.value?.project === p, dragging: s.dragged.value !== undefined };
    const open = sightOpen.value;
    if (!p || !g || !engine || !drawingOf(p)) return;
    untracked(() => {
      questions.glance.follow(engine, p, g, moment);
      if (!open) return;
      questions.reading.follow(engine, p, g, moment);
      questions.neighbours.follow(engine, p, g, moment);
    });
  });
}

let tries = 0;

/** Looks so if one can: the engine refuses what cannot be, in words. */
export async function tryToLook(change: (g: Gaze) => Gaze): Promise<Outcome> {
  const [engine, p, g] = [atHand.peek(), s.asked.peek(), gaze.peek()];
  if (!engine || !p || !g) return 'The engine is not there yet. Try again in a moment.';
  const { viewing, thresholds } = change(g);
  try {
    await engine.call('glance', { picked: s.picked(p), viewing, thresholds, asDrawn: true }, { lane: `${SMALL}gaze ${tries++}` });
  } catch (err) {
    return sentenceOf(err);
  }
  return () => {
    const now = gaze.peek();
    if (now) wished.value = change(now);
  };
}

/** A plain number that is typed for how the pin is looked at. */
export async function typedGaze(text: string, change: (g: Gaze, n: number) => Gaze): Promise<Outcome> {
  let n = Number.NaN;
  const read = await typed({ text, as: 'amount' }, (t) => (n = Number(t.text)));
  if (typeof read === 'string') return read;
  read();
  return tryToLook((g) => change(g, n));
}
