// Pure changes to the project value: each returns a new project and leaves the
// old one as it was.
import type { Design, DrawingRef, Edit, Opened, OrderPlace, PriceList, Project, RGB8, Version } from '../engine/wire.gen';

/** Which version of which design of an order. */
export type Place = OrderPlace;

const FIRST: Place = { design: 0, version: 0 };

/** What is on the sheet; the project keeps it, so that an older project value
 * still speaks of what it was made for. A place that is gone gives way to the
 * last one there is. */
export function pickedOf(p: Project): Place {
  const at = p.at ?? FIRST;
  const design = Math.max(0, Math.min(at.design, p.order.designs.length - 1));
  const version = Math.max(0, Math.min(at.version, (p.order.designs[design]?.versions.length ?? 1) - 1));
  return design === at.design && version === at.version ? at : { design, version };
}

export const withPlace = (p: Project, at: Place): Project => ({ ...p, at });

export function designOf(p: Project, at: Place = pickedOf(p)): Design | undefined {
  return p.order.designs[at.design];
}

export function versionOf(p: Project, at: Place = pickedOf(p)): Version | undefined {
  return designOf(p, at)?.versions[at.version];
}

export function priceListOf(p: Project): PriceList | undefined {
  return p.order.priceLists.find((l) => l.id === p.order.priceList);
}

export function drawingOf(p: Project, at: Place = pickedOf(p)): string | undefined {
  return designOf(p, at)?.drawings.at(-1)?.id;
}

export function withDesign(p: Project, change: Partial<Design>, at: Place = pickedOf(p)): Project {
  const designs = p.order.designs.map((d, i) => (i === at.design ? { ...d, ...change } : d));
  return { ...p, order: { ...p.order, designs } };
}

/** Another size by the same measure, mm. */
export function withSize(p: Project, mm: number, at: Place = pickedOf(p)): Project {
  const size = designOf(p, at)?.size;
  return size ? withDesign(p, { size: { ...size, mm } }, at) : p;
}

export function withVersion(p: Project, change: Partial<Version>, at: Place = pickedOf(p)): Project {
  const d = designOf(p, at);
  if (!d) return p;
  const versions = d.versions.map((v, i) => (i === at.version ? { ...v, ...change } : v));
  return withDesign(p, { versions }, at);
}

export function withEdit(p: Project, edit: Edit, at: Place = pickedOf(p)): Project {
  const d = designOf(p, at);
  return d ? withDesign(p, { edits: [...fold(d.edits, edit), edit] }, at) : p;
}

// A later edit of one of these kinds to the same flat, as seen at the same
// count, says all that the one before said, when nothing else came between; a
// slider then leaves one edit, not fifty.
const LAST_COUNTS: readonly Edit['op'][] = ['recolour', 'name', 'role', 'lock'];

function fold(edits: readonly Edit[], next: Edit): Edit[] {
  const last = edits.at(-1);
  const same = last && LAST_COUNTS.includes(next.op) && last.op === next.op && last.flat === next.flat && last.count === next.count;
  return same ? edits.slice(0, -1) : [...edits];
}

/** Changes the price list in use. */
export function withPriceList(p: Project, change: (l: PriceList) => PriceList): Project {
  const priceLists = p.order.priceLists.map((l) => (l.id === p.order.priceList ? change(l) : l));
  return { ...p, order: { ...p.order, priceLists } };
}

/** The proposed design takes the old one's place; what is the shop's choice,
 * not the drawing's, stays: its versions, their quantity and plating. */
export function withOpened(p: Project, o: Opened, name: string | undefined, keepChoices: boolean, at: Place = pickedOf(p)): Project {
  const before = designOf(p, at);
  const next = { ...o.design, ...(name ? { name } : {}) };
  if (!keepChoices || !before) return withDesign(p, next, at);
  const versions = before.versions.map((v) => ({ ...v, colours: [] }));
  return withDesign(unproved(p, before, o.drawing), { ...next, id: before.id, versions }, at);
}

/** A maker's proof shows the drawing it was made from: another one has none yet. */
function unproved(p: Project, before: Design, drawing: string): Project {
  const proofs = p.plans?.proofs;
  if (!proofs || before.drawings.some((r) => r.id === drawing)) return p;
  return { ...p, plans: { ...p.plans, proofs: proofs.filter((r) => r.design !== before.id) } };
}

/** As opened, on another background: the other versions of the drawing are kept. */
export function withGround(p: Project, o: Opened, name: string | undefined, at: Place = pickedOf(p)): Project {
  const before = designOf(p, at)?.drawings ?? [];
  const drawings = before.map((r, i) => (i === before.length - 1 ? { ...r, ground: o.design.drawings[0]?.ground ?? r.ground } : r));
  return withDesign(withOpened(p, o, name, true, at), { drawings }, at);
}

/** The drawing on the sheet, when another was there before it. */
export function revisedOf(p: Project, at: Place = pickedOf(p)): { now: DrawingRef; before: DrawingRef } | undefined {
  const [before, now] = designOf(p, at)?.drawings.slice(-2) ?? [];
  return before && now ? { before, now } : undefined;
}

export function hexOf(c: RGB8): string {
  return '#' + [c.r, c.g, c.b].map((v) => v.toString(16).padStart(2, '0')).join('');
}

/** Reads "#rgb" or "#rrggbb", with or without the hash. */
export function rgbOf(text: string): RGB8 | undefined {
  const t = text.trim().replace(/^#/, '').toLowerCase();
  const full = /^[0-9a-f]{3}$/.test(t) ? [...t].map((c) => c + c).join('') : t;
  if (!/^[0-9a-f]{6}$/.test(full)) return undefined;
  const n = parseInt(full, 16);
  return { r: n >> 16, g: (n >> 8) & 255, b: n & 255 };
}
