// Pure changes to the project value: each returns a new project and leaves the
// old one as it was.
import type { Design, DrawingRef, Edit, Opened, PriceList, Project, RGB8, Version } from '../engine/wire.gen';

/** Which design and version of the order is on the sheet. */
export interface Place {
  design: number;
  version: number;
}

export const FIRST: Place = { design: 0, version: 0 };

export function designOf(p: Project, at: Place = FIRST): Design | undefined {
  return p.order.designs[at.design];
}

export function versionOf(p: Project, at: Place = FIRST): Version | undefined {
  return designOf(p, at)?.versions[at.version];
}

export function priceListOf(p: Project): PriceList | undefined {
  return p.order.priceLists.find((l) => l.id === p.order.priceList);
}

export function drawingOf(p: Project, at: Place = FIRST): string | undefined {
  return designOf(p, at)?.drawings.at(-1)?.id;
}

export function withDesign(p: Project, change: Partial<Design>, at: Place = FIRST): Project {
  const designs = p.order.designs.map((d, i) => (i === at.design ? { ...d, ...change } : d));
  return { ...p, order: { ...p.order, designs } };
}

/** Another size by the same measure, mm. */
export function withSize(p: Project, mm: number, at: Place = FIRST): Project {
  const size = designOf(p, at)?.size;
  return size ? withDesign(p, { size: { ...size, mm } }, at) : p;
}

export function withVersion(p: Project, change: Partial<Version>, at: Place = FIRST): Project {
  const d = designOf(p, at);
  if (!d) return p;
  const versions = d.versions.map((v, i) => (i === at.version ? { ...v, ...change } : v));
  return withDesign(p, { versions }, at);
}

export function withEdit(p: Project, edit: Edit, at: Place = FIRST): Project {
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
 * not the drawing's, stays: quantity and plating. */
export function withOpened(p: Project, o: Opened, name: string | undefined, keepChoices: boolean, at: Place = FIRST): Project {
  const before = versionOf(p, at);
  const next = withDesign(p, { ...o.design, ...(name ? { name } : {}) }, at);
  return keepChoices && before ? withVersion(next, { quantity: before.quantity, plating: before.plating }, at) : next;
}

/** As opened, on another background: the other versions of the drawing are kept. */
export function withGround(p: Project, o: Opened, name: string | undefined, at: Place = FIRST): Project {
  const before = designOf(p, at)?.drawings ?? [];
  const drawings = before.map((r, i) => (i === before.length - 1 ? { ...r, ground: o.design.drawings[0]?.ground ?? r.ground } : r));
  return withDesign(withOpened(p, o, name, true, at), { drawings }, at);
}

/** The drawing on the sheet, when another was there before it. */
export function revisedOf(p: Project, at: Place = FIRST): { now: DrawingRef; before: DrawingRef } | undefined {
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
