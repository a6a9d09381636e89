// What is typed into a field goes to the engine, which reads it.
import { SMALL } from '../engine/queue';
import type { Typed, TypedAsk } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import * as s from './store';

/** What became of a typed text: a complaint in words, or how to take it. */
export type Outcome = string | (() => void);

type Wish = Pick<TypedAsk, 'text' | 'as'> & Partial<TypedAsk>;

let asked = 0;

/** Asks what a text means. Each question has a lane of its own, so that none
 * takes the place of another field's; they are answered in the order of asking.
 * What is taken goes to the version that was on the sheet when it was typed. */
export async function typed(wish: Wish, take: (t: Typed) => void): Promise<Outcome> {
  const engine = atHand.value;
  if (!engine) return 'The engine is not there yet. Try again in a moment.';
  const here = s.here();
  try {
    const { answer } = await engine.call('typed', { beside: '', least: 0, most: 0, ...wish }, { lane: `${SMALL}typed ${asked++}` });
    return () => here(() => take(answer));
  } catch (err) {
    return sentenceOf(err);
  }
}
