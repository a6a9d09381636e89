// The makers' proofs of a project: pure changes to its value.
import type { Deviation, Fit, Project, ProofRound } from '../engine/wire.gen';
import { designOf, versionOf, type Place } from './project';

export function proofsOf(p: Project): readonly ProofRound[] {
  return p.plans?.proofs ?? [];
}

/** The proofs of the version at a place, in the order they came. */
export function proofsAt(p: Project, at: Place): ProofRound[] {
  const [design, version] = [designOf(p, at)?.id, versionOf(p, at)?.id];
  return proofsOf(p).filter((r) => r.design === design && r.version === version);
}

const withProofs = (p: Project, proofs: ProofRound[]): Project => ({ ...p, plans: { ...p.plans, proofs } });

/** The next proof of a version, nothing known of it yet. */
export function freshProof(p: Project, at: Place, id: string, name: string, dated: string, photo: boolean): ProofRound {
  const before = proofsAt(p, at).filter((r) => Boolean(r.photo) === photo);
  return {
    id, name, dated, design: designOf(p, at)?.id ?? '', version: versionOf(p, at)?.id ?? '',
    maker: before.at(-1)?.maker ?? p.order.priceLists.find((l) => l.id === p.order.priceList)?.name ?? '',
    round: before.length + 1, how: photo ? { slant: true } : {}, ...(photo ? { photo } : {}),
    said: { size: { mm: 0, by: designOf(p, at)?.size.by ?? 'longest' }, measure: { from: { x: 0, y: 0 }, to: { x: 0, y: 0 }, mm: 0 } },
    differences: [],
  };
}

export function withProof(p: Project, r: ProofRound): Project {
  const all = proofsOf(p);
  return withProofs(p, all.some((o) => o.id === r.id) ? all.map((o) => (o.id === r.id ? r : o)) : [...all, r]);
}

/** Changes a proof as it is by then. */
export function changedProof(p: Project, id: string, change: (r: ProofRound) => ProofRound): Project {
  return withProofs(p, proofsOf(p).map((r) => (r.id === id ? change(r) : r)));
}

export function withoutProof(p: Project, id: string): Project {
  return withProofs(p, proofsOf(p).filter((r) => r.id !== id));
}

/** What was found takes its place; decisions go with the differences that stay. */
export function compared(r: ProofRound, fit: Fit, differences: Deviation[], same: ReadonlyMap<number, number>): ProofRound {
  const choices = (r.choices ?? []).flatMap((c) => {
    const number = same.get(c.number);
    return number === undefined ? [] : [{ ...c, number }];
  });
  return { ...r, fit, differences, choices };
}

/** What the person decided of a difference: a change is asked for until it is accepted. */
export function decided(r: ProofRound, number: number): { change: boolean; note: string } {
  const c = r.choices?.find((o) => o.number === number);
  return { change: c?.change ?? true, note: c?.note ?? '' };
}

export function withChoice(r: ProofRound, number: number, choice: { change?: boolean; note?: string }): ProofRound {
  const now = { ...decided(r, number), ...choice };
  return { ...r, choices: [...(r.choices ?? []).filter((c) => c.number !== number), { number, ...now }].toSorted((a, b) => a.number - b.number) };
}

/** The differences that a change is asked for. */
export function toChange(r: ProofRound): Deviation[] {
  return r.differences.filter((d) => d.verdict === 'fails' && decided(r, d.number).change);
}

/** By the engine's pairs: which number a difference of before has now. */
export function carried(pairs: readonly { first?: Deviation; other?: Deviation }[]): Map<number, number> {
  return new Map(pairs.flatMap(({ first, other }) => (first && other ? [[first.number, other.number] as const] : [])));
}
