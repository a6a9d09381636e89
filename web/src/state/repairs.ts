// Pure changes that repairs make to a project, and what the list of them says.
import type { Finding, Project, Recipe } from '../engine/wire.gen';
import { withBuilt } from './hands';
import { designOf, pickedOf, withDesign, type Place } from './project';

export type RepairKind = Extract<
  Recipe['kind'],
  'close-gap' | 'build-border' | 'thicken-line' | 'widen-area' | 'drop-thin' | 'grow-area' | 'drop-area' | 'merge-area' | 'open-up' | 'build-bridge' | 'round-tip'
>;

const REPAIRS: readonly string[] = [
  'close-gap', 'build-border', 'thicken-line', 'widen-area', 'drop-thin', 'grow-area', 'drop-area', 'merge-area', 'open-up', 'build-bridge', 'round-tip',
] satisfies RepairKind[];

export function isRepair(r: Recipe): r is Recipe & { kind: RepairKind } {
  return REPAIRS.includes(r.kind);
}

/** Trouble spots of lines and areas, which are repaired together. */
const INSIDE: readonly Finding['kind'][] = [
  'thin-line', 'narrow-area', 'fades-out', 'no-line', 'no-edge', 'gap', 'open-area', 'small-area', 'pinhole', 'metal-island', 'small-lettering', 'small-cut-out',
];

/** Trouble spots of the outline, each repaired by itself, but tips, which are rounded with all. */
const OUTLINE: readonly Finding['kind'][] = ['loose-part', 'weak-eye', 'thin-bridge', 'sharp-tip', 'long-arm'];

/** The trouble spots that repairs are looked for. */
export const mayMend = (f: Finding) => INSIDE.includes(f.kind) || OUTLINE.includes(f.kind);

/** How many places fail of what repairing all is about: of the outline, the tips. */
export const failing = (all: readonly Finding[]) => all.filter((f) => f.verdict === 'fails' && (INSIDE.includes(f.kind) || f.kind === 'sharp-tip')).length;

/** Adds repairs. Metal built all over goes before what has a place. */
export function withRepairs(p: Project, repairs: readonly Recipe[], at: Place = pickedOf(p)): Project {
  const d = designOf(p, at);
  if (!d) return p;
  let recipes = [...d.recipes];
  for (const r of repairs) recipes = r.points ? [...recipes, r] : withBuilt(recipes, r.kind, r.width);
  return withDesign(p, { recipes }, at);
}

/** The middle of where a recipe is, in shares of the drawing. */
export function middleOf(r: Recipe): [number, number] | undefined {
  const all = r.points ?? [];
  return all[Math.floor(all.length / 2)];
}

export interface Named {
  kind: RepairKind;
  /** What was done there: one repair, or several of a kind close together. */
  recipes: Recipe[];
  /** The place of the first among the recipes. */
  index: number;
  /** Which of its kind it is, from 1. */
  no: number;
}

/** Nearer than this, in shares of the drawing, repairs of a kind that were made
 * one after the other are one. */
const ONE_PLACE = 0.08;

function together(a: Recipe, b: Recipe): boolean {
  const [p, q] = [middleOf(a), middleOf(b)];
  return a.kind === b.kind && p !== undefined && q !== undefined && Math.hypot(p[0] - q[0], p[1] - q[1]) < ONE_PLACE;
}

/** The repairs of a design, numbered by kind in the order they were made. */
export function repairsOf(recipes: readonly Recipe[]): Named[] {
  const counts: Partial<Record<RepairKind, number>> = {};
  const all: Named[] = [];
  recipes.forEach((recipe, index) => {
    if (!isRepair(recipe)) return;
    const last = all.at(-1);
    const before = last?.recipes.at(-1);
    if (last && before && together(before, recipe)) {
      last.recipes.push(recipe);
      return;
    }
    const no = (counts[recipe.kind] ?? 0) + 1;
    counts[recipe.kind] = no;
    all.push({ kind: recipe.kind, recipes: [recipe], index, no });
  });
  return all;
}
