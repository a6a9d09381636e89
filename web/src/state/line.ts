// A line while it is drawn or erased by hand, or a capital while it is marked:
// points in shares of the drawing.
import type { LetterMark, Recipe } from '../engine/wire.gen';

export type Share = [x: number, y: number];

/** What a line by hand does to the metal. */
export type LineKind = 'draw-line' | 'erase-line';

export interface LineDraft {
  kind: LineKind | 'capital';
  /** mm; 0 is as thin as the maker holds, and a capital has none. */
  width: number;
  points: readonly Share[];
}

/** What is erased is this wide until another width is given, mm: about what a
 * drawn line is wide on a lapel pin. */
const ERASER = 1;

/** An eraser is wider than the line it is to take by this factor, so that no rim is left. */
const ROOMY = 1.25;

/** Eraser widths are offered in steps of this, mm. */
const STEP = 0.05;

/** A line wider than this is no line any more, mm. */
export const WIDEST = 5;

/** A narrower eraser takes nothing that could be seen, mm. */
export const NARROWEST_ERASER = 0.05;

/** A line begun, at a place or nowhere yet; an eraser fits the line it was put on. */
export function begun(kind: LineDraft['kind'], from?: Share, over?: number): LineDraft {
  return { kind, width: kind === 'erase-line' ? eraserOver(over) : 0, points: from ? [from] : [] };
}

function eraserOver(width: number | undefined): number {
  if (!width) return ERASER;
  return Math.min(WIDEST, Math.round(Math.ceil((width * ROOMY) / STEP) * STEP * 100) / 100);
}

export function turnedTo(d: LineDraft, kind: LineKind): LineDraft {
  return { ...d, kind, width: kind === 'erase-line' && d.width === 0 ? ERASER : d.width };
}

export function withPoint(d: LineDraft, to: Share): LineDraft {
  return { ...d, points: [...d.points, [within(to[0]), within(to[1])]] };
}

export function withoutLast(d: LineDraft): LineDraft {
  return { ...d, points: d.points.slice(0, -1) };
}

const within = (v: number) => Math.min(1, Math.max(0, v));

/** The recipe of a line that has two points at least. */
export function recipeOf(d: LineDraft): Recipe | undefined {
  return d.kind === 'capital' || d.points.length < 2 ? undefined : { kind: d.kind, width: d.width, points: d.points.map(([x, y]) => [x, y]) };
}

/** The mark of a capital whose foot and head are set. */
export function markOf(d: LineDraft): LetterMark | undefined {
  const [foot, head] = d.points;
  return d.kind === 'capital' && foot && head ? { x0: foot[0], y0: foot[1], x1: head[0], y1: head[1] } : undefined;
}

/** True when the next point is the last that is wanted. */
export function lastWanted(d: LineDraft): boolean {
  return d.kind === 'capital' && d.points.length === 1;
}
