// The browser's own database: projects, their work, drawings as they were
// brought, and pictures. Several projects may need one of these; it goes with the last of them.
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Kept, KeptDrawing, Meta, Work } from './keepRecord';
import type { Photo } from './photos';

interface Schema extends DBSchema {
  projects: { key: string; value: Meta };
  works: { key: string; value: Work };
  drawings: { key: string; value: KeptDrawing };
  pictures: { key: string; value: Photo };
}

const NAME = 'badgewright';
/** 2 keeps pictures too. */
const VERSION = 2;
const STORES = ['projects', 'works', 'drawings', 'pictures'] as const;

/** What is put away can be put back for so long, ms: a day. */
const PUT_AWAY = 86_400_000;

let db: Promise<IDBPDatabase<Schema>> | undefined;

function database(): Promise<IDBPDatabase<Schema>> {
  db ??= openDB<Schema>(NAME, VERSION, {
    upgrade(made) {
      for (const store of STORES) if (!made.objectStoreNames.contains(store)) made.createObjectStore(store, { keyPath: 'id' });
    },
    // A later page in another tab wants to change the database.
    blocking: () => void db?.then((d) => { d.close(); db = undefined; }),
    terminated: () => { db = undefined; },
  }).catch((err: unknown) => {
    db = undefined;
    throw err;
  });
  return db;
}

/** All projects, the one changed last first. */
export async function list(): Promise<Meta[]> {
  const all = await (await database()).getAll('projects');
  return all.sort((a, b) => b.changed - a.changed);
}

export async function load(id: string): Promise<Kept | undefined> {
  const tx = (await database()).transaction(STORES);
  const [meta, work] = await Promise.all([tx.objectStore('projects').get(id), tx.objectStore('works').get(id)]);
  if (!meta || !work) return undefined;
  const drawings = await Promise.all(meta.uses.map((u) => tx.objectStore('drawings').get(u)));
  const pictures = await Promise.all((meta.pictures ?? []).map((p) => tx.objectStore('pictures').get(p)));
  return { meta, work, drawings: drawings.filter((d) => d !== undefined), pictures: pictures.filter((p) => p !== undefined) };
}

/** Keeps a project that was at a revision; false when another tab has kept it since. */
export async function put({ meta, work, drawings, pictures }: Kept, was: number): Promise<boolean> {
  const tx = (await database()).transaction(STORES, 'readwrite');
  const there = await tx.objectStore('projects').get(meta.id);
  if ((there?.revision ?? 0) !== was) {
    await tx.done;
    return false;
  }
  await Promise.all([
    tx.objectStore('projects').put(meta), tx.objectStore('works').put(work),
    ...drawings.map((d) => tx.objectStore('drawings').put(d)),
    ...pictures.map((p) => tx.objectStore('pictures').put(p)),
    tx.done,
  ]);
  return true;
}

/** Changes what the list says of a project. */
export async function amend(id: string, change: (m: Meta) => Meta): Promise<void> {
  const tx = (await database()).transaction('projects', 'readwrite');
  const meta = await tx.store.get(id);
  await Promise.all([meta ? tx.store.put(change(meta)) : undefined, tx.done]);
}

/** Throws out what was put away a day ago, and drawings and pictures that nothing needs. */
export async function tidy(now: number): Promise<void> {
  const tx = (await database()).transaction(STORES, 'readwrite');
  const used = new Set<string>();
  for (const m of await tx.objectStore('projects').getAll()) {
    if (m.gone !== undefined && now - m.gone > PUT_AWAY) {
      await Promise.all([tx.objectStore('projects').delete(m.id), tx.objectStore('works').delete(m.id)]);
    } else for (const u of [...m.uses, ...(m.pictures ?? [])]) used.add(u);
  }
  for (const name of ['drawings', 'pictures'] as const) {
    const idle = (await tx.objectStore(name).getAllKeys()).filter((k) => !used.has(k));
    await Promise.all(idle.map((k) => tx.objectStore(name).delete(k)));
  }
  await tx.done;
}
