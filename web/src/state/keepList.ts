// The list of projects: renamed, copied, put away and put back, begun anew.
import { signal } from '@preact/signals';
import { DEMOS } from '../words/demos';
import { atHand } from './desk';
import { keepFlag, showFirst } from './first';
import { current, flush, guarded, leave, open, projects, refresh, standing } from './keep';
import { copyName, freshID, named, renamed, type Meta } from './keepRecord';
import * as store from './keepStore';
import * as s from './store';

/** What was put away last here, until it is put back or another is. */
export const putAway = signal<Meta | undefined>(undefined);

/** Begins anew as on the first visit: with our own example, which is not kept until it is changed. */
export async function beginAnew(): Promise<void> {
  const engine = atHand.value;
  if (!engine) return;
  await leave();
  // What the browser would not keep is not thrown away for a look at the example.
  if (standing.value.kind === 'refused') return;
  keepFlag(undefined);
  s.history.value = undefined;
  await showFirst(engine, DEMOS.lighthouse);
}

export const rename = (m: Meta, name: string) => guarded(async () => {
  if (m.id === current.value?.id) {
    s.change((p) => named(p, name), `Called ${name}`);
    return flush();
  }
  const kept = await store.load(m.id);
  if (!kept) return refresh();
  const meta = { ...kept.meta, name, changed: Date.now(), revision: kept.meta.revision + 1 };
  await store.put({ meta, work: renamed(kept.work, name), drawings: [], pictures: [] }, kept.meta.revision);
  await refresh();
});

export const copy = (m: Meta) => guarded(async () => {
  await flush();
  const kept = await store.load(m.id);
  if (!kept) return refresh();
  const [id, name] = [freshID(), copyName(kept.meta.name, projects.value.map((o) => o.name))];
  const meta = { ...kept.meta, id, name, changed: Date.now(), revision: 1 };
  await store.put({ meta, work: { ...renamed(kept.work, name), id }, drawings: [], pictures: [] }, 0);
  await refresh();
  s.said.value = `Copied ${kept.meta.name}`;
});

export const remove = (m: Meta) => guarded(async () => {
  const here = m.id === current.value?.id;
  if (here) await beginAnew();
  await store.amend(m.id, (o) => ({ ...o, gone: Date.now() }));
  putAway.value = m;
  await refresh();
  s.said.value = `Put away ${m.name}`;
});

export const putBack = () => guarded(async () => {
  const m = putAway.value;
  if (!m) return;
  putAway.value = undefined;
  await store.amend(m.id, ({ gone: _gone, ...o }) => o);
  await refresh();
  if (!current.value) await open(m.id);
});
