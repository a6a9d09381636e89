// True size as the page draws it: by what the engine said of this screen, and
// by how far the page was stretched since.
import type { Report, TrueSize } from '../engine/wire.gen';

/** What the engine said, and of what. */
export interface Answered {
  report: Report;
  size: TrueSize;
}

/** How far page zoom and pinch stretch what is drawn. */
const stretch = (r: Report) => r.ratio * r.pinch;

/** CSS px for one mm now: a stretch that the engine has not been told of yet is taken out here. */
export function drawnPerMM(a: Answered, now: Report): number {
  return (a.size.perMM * stretch(a.report)) / stretch(now);
}

/** Pinching alone changes nothing that the engine has to say. */
export function worthAsking(asked: Report, now: Report): boolean {
  return JSON.stringify({ ...asked, pinch: 0 }) !== JSON.stringify({ ...now, pinch: 0 });
}
