// What is kept of a project, and how it is made of what is on the sheet.
import type { Open } from '../engine/client';
import { FORMAT, type FlawedPiece, type Opened, type ParcelRow, type Project } from '../engine/wire.gen';
import { replace, type History } from './history';
import type { Photo } from './photos';

/** A project as the list of projects shows it. */
export interface Meta {
  id: string;
  name: string;
  /** When it was changed last, ms since 1970. */
  changed: number;
  /** Counts every time it is kept: two tabs see by it that they meet. */
  revision: number;
  /** Drawings it needs, those of its undo history too. */
  uses: string[];
  /** Pictures it needs, those of its undo history too; none in what was kept before there were any. */
  pictures?: string[];
  thumb?: Blob;
  /** When it was put away, ms since 1970. */
  gone?: number;
}

/** What was made: the whole history of a project. */
export interface Work {
  id: string;
  format: number;
  history: History<Project>;
}

/** A drawing's own files, how they were opened, and what was found in them. */
export interface KeptDrawing {
  id: string;
  open: Open;
  opened?: Opened;
}

export interface Kept {
  meta: Meta;
  work: Work;
  drawings: KeptDrawing[];
  pictures: Photo[];
}

/** The drawings that a project speaks of, in order. */
export function drawingsIn(p: Project): string[] {
  return [...new Set(p.order.designs.flatMap((d) => d.drawings.map((r) => r.id)))];
}

/** The pictures that a project names, of flawed pieces and of makers' proofs, in order. */
export function picturesIn(p: Project): string[] {
  const all = new Set<string>();
  withPictures(p, (id) => {
    all.add(id);
    return id;
  });
  return [...all];
}

const states = (h: History<Project>) => [h.now, ...h.past.map((s) => s.value), ...h.future.map((s) => s.value)];

/** What every step needs that can be gone back or forward to. */
export function needsOf(h: History<Project>): Pick<Meta, 'uses' | 'pictures'> {
  const of = (named: (p: Project) => string[]) => [...new Set(states(h).flatMap(named))];
  const pictures = of(picturesIn);
  return { uses: of(drawingsIn), ...(pictures.length > 0 ? { pictures } : {}) };
}

/** What a project is called: as it was named, else like its first design. */
export function nameOf(p: Project, unnamed: string): string {
  const { name, designs } = p.order;
  return (name !== unnamed && name.trim()) || designs[0]?.name || unnamed;
}

export const named = (p: Project, name: string): Project => ({ ...p, order: { ...p.order, name } });

/** The same work under another name, as one more step. */
export const renamed = (w: Work, name: string): Work => ({ ...w, history: replace(w.history, named(w.history.now, name), `Called ${name}`) });

/** A name for a copy that no other project has: "Skerry Light, copy 2". */
export function copyName(name: string, taken: readonly string[]): string {
  const stem = `${name.replace(/, copy(?: \d+)?$/, '')}, copy`;
  let n = 2;
  if (!taken.includes(stem)) return stem;
  while (taken.includes(`${stem} ${n}`)) n++;
  return `${stem} ${n}`;
}

/** Whether nothing was done yet but to look at our own examples. */
export function onlyLooked(h: History<Project>, examples: readonly string[], demo: string): boolean {
  const looked = new Set(examples.map((e) => `Opened ${e}`));
  const steps = [...h.past, ...h.future];
  if (!steps.every((s) => looked.has(s.what))) return false;
  return steps.length > 0 || drawingsIn(h.now).every((id) => id === demo);
}

/** The project with its drawings called otherwise. */
export function withDrawings(p: Project, names: ReadonlyMap<string, string>): Project {
  const designs = p.order.designs.map((d) => ({ ...d, drawings: d.drawings.map((r) => ({ ...r, id: names.get(r.id) ?? r.id })) }));
  return { ...p, order: { ...p.order, designs } };
}

/** The project with its pictures called otherwise: the one place that knows where they are named. */
export function withPictures(p: Project, to: (id: string) => string): Project {
  const { parcels, proofs } = p.plans ?? {};
  if (!parcels && !proofs) return p;
  const piece = (f: FlawedPiece) => (f.photos ? { ...f, photos: f.photos.map(to) } : f);
  const row = (r: ParcelRow) => (r.flawed ? { ...r, flawed: r.flawed.map(piece) } : r);
  return { ...p, plans: {
    ...p.plans,
    ...(parcels ? { parcels: parcels.map((o) => ({ ...o, rows: o.rows.map(row) })) } : {}),
    ...(proofs ? { proofs: proofs.map((r) => ({ ...r, id: to(r.id) })) } : {}),
  } };
}

/** Whether what was kept can be laid on the sheet as it is. */
export const isToday = (w: Work) => w.format === FORMAT;

export const freshID = () => Math.random().toString(36).slice(2, 12);
