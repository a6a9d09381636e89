// Designs and versions of an order that come, go and are copied: pure changes,
// and what the page does with them.
import type { Design, Opened, Project, Version } from '../engine/wire.gen';
import { bring, type Files } from './ask';
import { designOf, pickedOf, versionOf, withDesign, withPlace, withVersion, type Place } from './project';
import * as s from './store';

/** The first of "version-1", "version-2" … that is free. */
function freeID(kind: string, taken: readonly { id: string }[]): string {
  const ids = new Set(taken.map((t) => t.id));
  let n = 1;
  while (ids.has(`${kind}-${n}`)) n++;
  return `${kind}-${n}`;
}

/** A name that no other has: "Gull", "Gull 2" … */
function freeName(name: string, taken: readonly { name: string }[]): string {
  const names = new Set(taken.map((t) => t.name));
  if (!names.has(name)) return name;
  let n = 2;
  while (names.has(`${name} ${n}`)) n++;
  return `${name} ${n}`;
}

const inserted = <T>(all: readonly T[], at: number, one: T): T[] => [...all.slice(0, at), one, ...all.slice(at)];
const without = <T>(all: readonly T[], at: number): T[] => all.filter((_, i) => i !== at);

const withDesigns = (p: Project, designs: Design[]): Project => ({ ...p, order: { ...p.order, designs } });

/** One version more of the design on the sheet, as the one there; it then lies on the sheet. */
export function withVersionMore(p: Project, name: string): Project {
  const at = pickedOf(p);
  const [d, v] = [designOf(p), versionOf(p)];
  if (!d || !v) return p;
  const next: Version = { ...v, id: freeID('version', d.versions), name: freeName(name, d.versions) };
  return withPlace(withDesign(p, { versions: inserted(d.versions, at.version + 1, next) }), { design: at.design, version: at.version + 1 });
}

/** A design without one of its versions; the last one stays. */
export function withoutVersion(p: Project): Project {
  const at = pickedOf(p);
  const d = designOf(p);
  if (!d || d.versions.length < 2) return p;
  return withPlace(withDesign(p, { versions: without(d.versions, at.version) }), { design: at.design, version: Math.max(0, at.version - 1) });
}

/** A design more, after the one on the sheet; it then lies on the sheet. */
function withDesignMore(p: Project, d: Design): Project {
  const { design } = pickedOf(p);
  const all = p.order.designs;
  const next = { ...d, id: freeID('design', all), name: freeName(d.name, all) };
  return withPlace(withDesigns(p, inserted(all, design + 1, next)), { design: design + 1, version: 0 });
}

/** A drawing that was opened, as one design more: ordered in the number and
 * plating of what lies on the sheet. */
export function withOpenedMore(p: Project, o: Opened, name: string | undefined): Project {
  const v = versionOf(p);
  const next = withDesignMore(p, { ...o.design, ...(name ? { name } : {}) });
  return v ? withVersion(next, { quantity: v.quantity, plating: v.plating }) : next;
}

export function withDesignCopied(p: Project): Project {
  const d = designOf(p);
  return d ? withDesignMore(p, d) : p;
}

/** An order without the design on the sheet; the last one stays. */
export function withoutDesign(p: Project): Project {
  const { design } = pickedOf(p);
  if (p.order.designs.length < 2) return p;
  return withPlace(withDesigns(p, without(p.order.designs, design)), { design: Math.max(0, design - 1), version: 0 });
}

/** Every place of an order, in its order. */
export const placesIn = (p: Project): Place[] =>
  p.order.designs.flatMap((d, design) => d.versions.map((_, version) => ({ design, version })));

/** Opens a drawing as one design more. */
export async function openMore(files: Files, as?: string): Promise<boolean> {
  const o = await bring(files);
  if (!o) return false;
  const name = as ?? o.design.name;
  s.clearSheet();
  s.change((p) => withOpenedMore(p, o, as), `Added ${name}`);
  if (o.notes.length > 0 && as === undefined) s.tell(`${name} is on the sheet.`, o.notes.join(' '));
  return true;
}

/** A change that lays another version on the sheet. */
export function changeSheet(make: (p: Project) => Project, what: string): void {
  s.clearSheet();
  s.change(make, what);
}
