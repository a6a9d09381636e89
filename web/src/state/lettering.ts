// Capitals that the person marked, foot and head.
import type { LetterMark, Lettered, Project } from '../engine/wire.gen';
import { designOf, pickedOf, withDesign, type Place } from './project';

const same = (a: LetterMark, b: LetterMark) => a.x0 === b.x0 && a.y0 === b.y0 && a.x1 === b.x1 && a.y1 === b.y1;

export function withMark(p: Project, mark: LetterMark, at: Place = pickedOf(p)): Project {
  const d = designOf(p, at);
  return d ? withDesign(p, { lettering: [...d.lettering ?? [], mark] }, at) : p;
}

export function withoutMark(all: readonly LetterMark[], mark: LetterMark): LetterMark[] {
  return all.filter((m) => !same(m, mark));
}

/** What was answered of a mark; nothing while that is still being found. */
export function toldOf(told: readonly Lettered[], mark: LetterMark): Lettered | undefined {
  return told.find((c) => same(c.mark, mark));
}
