// Ideas that tell two colours apart: looked at first, then made as one step.
import { signal } from '@preact/signals';
import type { Idea, Pair, Project } from '../engine/wire.gen';
import { withHandEdit } from './colouring';
import { atHand, sentenceOf } from './desk';
import { cutOut } from './eyeCut';
import { designOf, pickedOf, withVersion, type Place } from './project';
import { withRepairs } from './repairs';
import * as s from './store';

/** The project with an idea made. */
export function withIdea(p: Project, idea: Idea, at: Place = pickedOf(p)): Project {
  if (idea.recipe) return withRepairs(p, [idea.recipe], at);
  // An edit speaks of the colours as they are shown, so it goes with their count.
  if (idea.edit) return withHandEdit(p, { ...idea.edit, count: designOf(p, at)?.colours ?? 0 }, at);
  return idea.plating ? withVersion(p, { plating: idea.plating }, at) : p;
}

/** An idea as it would look at the place of its pair, and as it is. */
export interface Trial {
  project: Project;
  idea: Idea;
  before: { pixels: ImageData } | undefined;
  /** Missing while it is drawn. */
  after: { pixels: ImageData } | undefined;
  problem: string;
}

export const trial = signal<Trial | undefined>(undefined);

/** Long side of the pin from which the place is cut, px: a line of a fifth of a
 * millimetre is then still some pixels wide. */
const LONG_SIDE = 960;

/** Looks at an idea without making it. */
export async function tryIdea(project: Project, idea: Idea, pair: Pair): Promise<void> {
  if (trial.peek()?.project === project && trial.peek()?.idea === idea) return;
  const front = s.front.peek();
  const before = front?.project === project ? cutOut(front.shot, pair) : undefined;
  const mine: Trial = { project, idea, before, after: undefined, problem: '' };
  trial.value = mine;
  try {
    const got = await atHand.peek()?.call('picture', { picked: s.picked(withIdea(project, idea)), view: 'struck', longSide: LONG_SIDE }, { lane: 'idea' });
    if (!got?.bytes || trial.peek() !== mine) return;
    const { w, h } = got.answer;
    const pixels = new ImageData(new Uint8ClampedArray(got.bytes.buffer, got.bytes.byteOffset, 4 * w * h), w, h);
    trial.value = { ...mine, after: cutOut({ picture: got.answer, pixels }, pair) };
  } catch (err) {
    if (trial.peek() === mine) trial.value = { ...mine, problem: sentenceOf(err) };
  }
}

/** Makes an idea, as one step that can be undone. */
export function makeIdea(idea: Idea): void {
  trial.value = undefined;
  s.change((p) => withIdea(p, idea), idea.words.replace(/\.$/, ''));
}
