// Pure changes made by hand at a spot: an area filled, a line drawn, erased or
// taken out again.
import type { Edit, Flat, Flats, Gap, HandLine, Project, Recipe, RGB8, Role, Touch } from '../engine/wire.gen';
import { designOf, pickedOf, hexOf, withDesign, type Place } from './project';

/** What lies under a place that was touched. */
export interface Under {
  /** The place, in shares (0..1) of the drawing's width and height. */
  x: number;
  y: number;
  /** Of the one closed area or connected line, mm². */
  area: number;
  /** Here, mm. */
  width: number;
  built: boolean;
  /** Where a fill would leak. */
  gap: Gap | undefined;
  /** Lines drawn by hand, which a fill does not cross. */
  lines: HandLine[];
}

/** What was touched at a place of the working raster. */
export function underOf(t: Touch, x: number, y: number, raster: { w: number; h: number }): Under {
  return { x: x / raster.w, y: y / raster.h, area: t.area, width: t.width, built: t.built, gap: t.gap, lines: t.lines ?? [] };
}

/** What an area is to become. Without a colour it keeps its own. */
export interface Wish {
  rgb?: RGB8 | undefined;
  role: Role;
}

/** The flat drawing as it is shown, and the count of enamels asked for with it. */
export interface Seen {
  flats: Flats;
  asked: number;
  /** Enamels a pin can have. */
  most: number;
}

/** The colour a flat has in the drawing, whatever the version makes of it. */
export function drawnIn(flats: Flats, f: Flat): RGB8 {
  return flats.codes?.find((c) => c.flat === f.id)?.drawn ?? f.rgb;
}

/** How many areas a flat has. */
export function piecesOf(flats: Flats, flat: number): number {
  return flats.spots.find((s) => s.flat === flat)?.pieces ?? 1;
}

/** The edit that fills what lies under a place; with `side` it stops at the gap. */
export function fillOf(under: Under, from: Flat | undefined, wish: Wish, side: boolean, count: number): Edit {
  return { op: 'fill', flat: from?.id ?? 0, ...placeOf(under, side), role: wish.role, ...(wish.rgb ? { rgb: wish.rgb } : {}), count };
}

/** The edit that makes what lies under a place a colour of its own. */
export function splitOf(under: Under, from: Flat, side: boolean, count: number): Edit {
  return { op: 'split', flat: from.id, ...placeOf(under, side), count };
}

function placeOf(under: Under, side: boolean): Pick<Edit, 'x' | 'y' | 'gap' | 'lines'> {
  const { x, y, gap, lines } = under;
  return { x, y, ...(side && gap ? { gap: gap.ends } : {}), ...(lines.length > 0 ? { lines } : {}) };
}

/** True when a flat is gone once what lies under a place is another. */
function last(flats: Flats, from: Flat | undefined, under: Under, side: boolean): boolean {
  // A line drawn by hand may part the area, of which then a part stays.
  return from !== undefined && !side && under.lines.length === 0 && piecesOf(flats, from.id) === 1;
}

/** How many enamels more, or fewer, there are once an area has become what is
 * wished: a colour that is not there yet comes, one whose last area it was goes. */
export function moreEnamels(flats: Flats, from: Flat | undefined, under: Under, wish: Wish, side: boolean): number {
  const rgb = wish.rgb ?? (from && drawnIn(flats, from));
  const same = (f: Flat) => f.role === wish.role && rgb !== undefined && hexOf(drawnIn(flats, f)) === hexOf(rgb);
  const comes = wish.role === 'enamel' && !flats.flats.some(same);
  const goes = from?.role === 'enamel' && last(flats, from, under, side);
  return Number(comes) - Number(goes);
}

/** How many enamels more, or fewer, there are once an edit is made to all of a flat. */
export function moreByEdit(flat: Flat, e: Edit): number {
  const was = Number(flat.role === 'enamel');
  if (e.op === 'role') return Number(e.role === 'enamel') - was;
  return e.op === 'join' ? 0 - was : 0;
}

/** True when a colour that is not there yet can still come. */
export function roomForMore(seen: Seen, from: Flat | undefined, under: Under): boolean {
  const goes = from?.role === 'enamel' && last(seen.flats, from, under, under.gap !== undefined);
  return seen.flats.count + 1 - Number(goes) <= seen.most;
}

/** The count to ask for, so that a colour that comes takes no other's place. */
export function countFor(seen: Seen, more: number): number {
  const { asked, most, flats } = seen;
  if (more > 0) return Math.min(most, Math.max(asked, flats.count + more));
  return more < 0 && asked <= flats.count ? Math.max(1, flats.count + more) : asked;
}

/** One step: an edit at an area, the count it needs, and the line that closes the gap. */
export function withArea(p: Project, edit: Edit, colours: number, closing: Gap | undefined, at: Place = pickedOf(p)): Project {
  const d = designOf(p, at);
  if (!d) return p;
  const recipes = closing ? [...d.recipes, lineAcross(closing)] : d.recipes;
  return withDesign(p, { edits: [...d.edits, edit], colours, recipes }, at);
}

/** A line from one side of a gap to the other, as thin as the maker holds. */
export function lineAcross(gap: Gap): Recipe {
  const [x0, y0, x1, y1] = gap.ends;
  return { kind: 'draw-line', width: 0, points: [[x0, y0], [x1, y1]] };
}

/** Drawn, erased or repaired at a place, as against built all over. */
const byHand = (r: Recipe) => r.points !== undefined;

export function withRecipe(p: Project, r: Recipe, at: Place = pickedOf(p)): Project {
  const d = designOf(p, at);
  return d ? withDesign(p, { recipes: [...d.recipes, r] }, at) : p;
}

/** Metal built all over, before what was done by hand, so that a line that was
 * erased stays erased. */
export function withBuilt(all: readonly Recipe[], kind: Recipe['kind'], width: number): Recipe[] {
  const next = { kind, width };
  if (all.some((r) => r.kind === kind)) return all.map((r) => (r.kind === kind ? { ...r, width } : r));
  const first = all.findIndex(byHand);
  return first < 0 ? [...all, next] : [...all.slice(0, first), next, ...all.slice(first)];
}

/** Proposed metal that is kept is metal like any other. */
export function withKept(all: readonly Recipe[]): Recipe[] {
  return all.map((r) => {
    const { proposed: _, ...kept } = r;
    return kept;
  });
}

export function withoutProposed(all: readonly Recipe[]): Recipe[] {
  return all.filter((r) => !r.proposed);
}
