// Repairs: what is offered for a trouble spot, what repairing all comes to, and
// the smallest size that holds as repaired. Nothing is changed by asking.
import { signal } from '@preact/signals';
import type { Finding, MendAll, Offers, Picture, Project, Recipe, Search } from '../engine/wire.gen';
import { atHand, faultOf } from './desk';
import { designOf } from './project';
import { withRepairs } from './repairs';
import * as s from './store';

export interface Offered {
  project: Project;
  finding: Finding;
  /** Missing while repairs are tried. */
  answer: Offers | undefined;
  /** The place as it is, then as each offer leaves it. */
  pictures: { pixels: ImageData }[];
}

export const offered = signal<Offered | undefined>(undefined);

/** A close-up's side on the page, px. */
export const CLOSE_UP = 128;

export async function askOffers(project: Project, finding: Finding): Promise<void> {
  const now: Offered = { project, finding, answer: undefined, pictures: [] };
  offered.value = now;
  const side = Math.min(512, Math.ceil(CLOSE_UP * devicePixelRatio));
  try {
    const got = await atHand.value?.call('offers', { picked: s.picked(project), finding, side }, { lane: 'offers' });
    if (!got || offered.value !== now) return;
    offered.value = { ...now, answer: got.answer, pictures: cut(got.bytes, got.answer.side) };
  } catch (err) {
    if (offered.value === now) offered.value = undefined;
    complain(err);
  }
}

/** The pictures that came one after the other, square. */
function cut(bytes: Uint8Array<ArrayBuffer> | undefined, side: number): { pixels: ImageData }[] {
  if (!bytes || side === 0) return [];
  const each = 4 * side * side;
  return Array.from({ length: Math.floor(bytes.length / each) }, (_, i) => (
    { pixels: new ImageData(new Uint8ClampedArray(bytes.buffer, bytes.byteOffset + i * each, each), side, side) }));
}

export interface Preview {
  project: Project;
  answer: MendAll;
  before: { picture: Picture; pixels: ImageData } | undefined;
  after: { picture: Picture; pixels: ImageData } | undefined;
}

/** Every repair, made nowhere yet. */
export const preview = signal<Preview | undefined>(undefined);

/** Repairs are being tried. */
export const mending = signal(false);

/** The long side of a preview, px. */
const PREVIEW = 960;

export async function askAll(project: Project): Promise<void> {
  const engine = atHand.value;
  if (!engine || mending.value) return;
  mending.value = true;
  preview.value = undefined;
  const stopper = new AbortController();
  try {
    const { answer } = await engine.call('mendall', { picked: s.picked(project) }, {
      lane: 'mend', signal: stopper.signal,
      onProgress: (share, step) => (s.work.value = share >= 1 ? undefined : { doing: step, share, stop: () => stopper.abort() }),
    });
    const shot = async (p: Project, lane: string) => {
      const { answer: picture, bytes } = await engine.call('picture', { picked: s.picked(p), view: 'struck', longSide: PREVIEW }, { lane });
      return bytes && { picture, pixels: new ImageData(new Uint8ClampedArray(bytes.buffer, bytes.byteOffset, 4 * picture.w * picture.h), picture.w, picture.h) };
    };
    const some = answer.recipes.length > 0;
    const before = some ? await shot(project, 'mend before') : undefined;
    const after = some ? await shot(withRepairs(project, answer.recipes), 'mend after') : undefined;
    preview.value = { project, answer, before, after };
  } catch (err) {
    complain(err);
  } finally {
    s.work.value = undefined;
    mending.value = false;
  }
}

/** Makes repairs, as one step. */
export function makeRepairs(recipes: readonly Recipe[], what: string): void {
  preview.value = undefined;
  s.change((p) => withRepairs(p, recipes), what);
}

export interface Sized {
  cause: string;
  search: Search;
  share: number;
  size: { mm: number; inMM: string } | undefined;
  running: boolean;
}

/** The smallest size that holds as repaired, as far as it is found. */
export const sized = signal<Sized | undefined>(undefined);

/** What that size hangs on; a change of size asks nothing anew. */
export function sizedBy(p: Project): string {
  const d = designOf(p);
  return JSON.stringify([d?.drawings, d?.colours, d?.edits, d?.recipes, d?.parts, d?.limits, d?.size.by]);
}

/** Tries one size after another, and leaves room for other questions between. */
export async function seekSize(project: Project): Promise<void> {
  const cause = sizedBy(project);
  let search: Search | undefined = sized.value?.cause === cause ? sized.value.search : undefined;
  if (search?.done || (sized.value?.cause === cause && sized.value.running)) return;
  sized.value = { cause, search: search ?? NOTHING_TRIED, share: 0, size: undefined, running: true };
  const mine = () => sized.value?.cause === cause && sized.value.running;
  try {
    while (mine()) {
      const got = await atHand.value?.call('mendedfrom', { picked: s.picked(project), ...(search ? { search } : {}) }, { lane: 'mended from' });
      if (!got || !mine()) return;
      const { answer } = got;
      search = answer.search;
      const size = answer.size.mm > 0 ? answer.size : undefined;
      sized.value = { cause, search, share: answer.share, size, running: !search.done };
    }
  } catch (err) {
    if (mine()) sized.value = undefined;
    complain(err);
  }
}

const NOTHING_TRIED: Search = { least: 0, most: 0, tried: 0, found: false, done: false };

export function stopSeeking(): void {
  const now = sized.value;
  if (now) sized.value = { ...now, running: false };
}

function complain(err: unknown): void {
  const kind = typeof err === 'object' && err !== null && 'kind' in err ? err.kind : undefined;
  if (kind === 'stopped' || kind === 'superseded') return;
  const fault = faultOf(err);
  s.tell(fault.what, fault.do);
}
