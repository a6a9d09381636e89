import type { FailureKind } from './wire.gen';

/** Why a call gave no answer. The engine's own kinds, and two of the client's:
 * superseded (a newer call took its place) and gone (the drawing must be
 * opened again). */
export type ErrorKind = FailureKind | 'superseded' | 'gone';

/** An error in plain words: what happened, and what to do about it. */
export class EngineError extends Error {
  readonly what: string;
  readonly do: string;
  readonly kind: ErrorKind;

  constructor(what: string, todo: string, kind: ErrorKind) {
    super(todo ? `${what} ${todo}` : what);
    this.name = 'EngineError';
    this.what = what;
    this.do = todo;
    this.kind = kind;
  }
}

export const stopped = () => new EngineError('Stopped.', 'Nothing was changed.', 'stopped');

export const superseded = () => new EngineError('A newer request took the place of this one.', '', 'superseded');

export const crashed = () =>
  new EngineError(
    'The engine stopped by a fault of ours while working on this.',
    'Your work is kept and the engine has started again; try a smaller change, or the drawing at a smaller size.',
    'crashed',
  );
