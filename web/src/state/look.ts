// What a project's picture hangs on, its size left out: two projects of one
// look may lend each other labels while the size is dragged.
import type { Project } from '../engine/wire.gen';
import { designOf, pickedOf, versionOf, type Place } from './project';

export function lookOf(p: Project, at: Place = pickedOf(p)): string {
  const d = designOf(p, at);
  const v = versionOf(p, at);
  return JSON.stringify([d?.drawings, d?.colours, d?.edits, d?.recipes, d?.parts, d?.making, d?.fill, v?.plating, v?.colours]);
}
