// What the papers say, asked while their section is open. A paper that follows
// from the drawing is asked for once for a design as it is: what the person
// states of papers changes the project and not the pin.
import { computed, effect, signal, untracked } from '@preact/signals';
import type { Asked, BackingCard, CardLaid, Design, Inquiry, PapersPlan, Plans, Project, Shapes } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import { withFonts } from './fonts';
import { about } from './handed';
import { designOf, type Place } from './project';
import * as s from './store';

/** The section is unfolded: nothing is asked before. */
export const papersOpen = signal(false);
/** Why the papers at hand are not there. */
export const problem = signal('');

export const plansOf = (p: Project): Plans => p.plans ?? {};
export const planOf = (p: Project): PapersPlan => p.plans?.papers ?? {};

export function withPapers(p: Project, change: Partial<PapersPlan>): Project {
  return { ...p, plans: { ...plansOf(p), papers: { ...planOf(p), ...change } } };
}

export function withCard(p: Project, card: BackingCard): Project {
  return { ...p, plans: { ...plansOf(p), card } };
}

/** The project in which a design as it is was first seen, so that it is handed
 * over once whatever is stated beside it. */
const firstSeen = new WeakMap<Design, Project>();

export function anchor(p: Project, at: Place): Project {
  const d = designOf(p, at);
  if (!d) return p;
  const seen = firstSeen.get(d);
  if (seen && designOf(seen, at) === d) return seen;
  firstSeen.set(d, p);
  return p;
}

/** Every version that has a drawing, in the order's order. */
export function placesOf(p: Project): Place[] {
  return p.order.designs.flatMap((d, design) => (d.drawings.length > 0 ? d.versions.map((_, version) => ({ design, version })) : []));
}

const known = new WeakMap<Design, Map<number, Promise<Asked>>>();

function askedAt(p: Project, at: Place): Promise<Asked> {
  const d = designOf(p, at);
  if (!d) return Promise.reject(new Error('There is no such design.'));
  const of = known.get(d) ?? new Map<number, Promise<Asked>>();
  known.set(d, of);
  const had = of.get(at.version);
  if (had) return had;
  const got = about(anchor(p, at), at, 'asked', {}, { lane: `asked ${at.design} ${at.version}` }).then((g) => g.answer);
  of.set(at.version, got);
  got.catch(() => of.delete(at.version));
  return got;
}

/** All versions as the papers speak of them, one after the other. */
export async function askedAll(p: Project): Promise<Asked[]> {
  const all: Asked[] = [];
  for (const at of placesOf(p)) all.push(await askedAt(p, at));
  return all;
}

export interface Written {
  project: Project;
  asked: Asked[];
  inquiry: Inquiry;
}

/** The message, and what it was written from. */
export const written = signal<Written | undefined>(undefined);
/** The card as laid out. */
export const laid = signal<{ project: Project; at: Place; answer: CardLaid } | undefined>(undefined);
/** The pin in clean curves, for the small picture of its layers. */
export const curves = signal<Shapes | undefined>(undefined);

const overtaken = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && (err.kind === 'superseded' || err.kind === 'stopped');

async function refresh(p: Project): Promise<void> {
  try {
    const all = await askedAll(p);
    const files = ['the spec sheet', 'the layers at true size'];
    const got = await atHand.value?.call('inquiry', { asked: all, plan: planOf(p), files }, { lane: 'inquiry' });
    if (!got || s.asked.value !== p) return;
    written.value = { project: p, asked: all, inquiry: got.answer };
    const at = s.at.value;
    const { answer: shapes } = await about(anchor(p, at), at, 'shapes', {}, { lane: 'paper shapes' });
    if (s.asked.value === p) curves.value = shapes;
    await layCard(p, at);
    if (s.asked.value === p) problem.value = '';
  } catch (err) {
    if (!overtaken(err) && s.asked.value === p) problem.value = sentenceOf(err);
  }
}

async function layCard(p: Project, at: Place): Promise<void> {
  await withFonts();
  const card = p.plans?.card;
  const { answer } = await about(anchor(p, at), at, 'card', card ? { card } : {}, { lane: 'card' });
  if (s.asked.value === p) laid.value = { project: p, at, answer: withData(answer, card) };
}

/** The answer leaves the picture's bytes out: the project has them. */
function withData(answer: CardLaid, card: BackingCard | undefined): CardLaid {
  const picture = card?.picture;
  return picture && answer.card.picture ? { ...answer, card: { ...answer.card, picture } } : answer;
}

/** Let a wish settle before the papers follow it, ms. */
const SETTLE = 150;

/** Keeps the papers up with the project: called once. */
export function followPapers(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const p = s.asked.value;
    const ready = papersOpen.value && p && s.shown.value && !s.behind.value && !s.dragged.value && atHand.value;
    if (!ready || !p) return;
    untracked(() => {
      clearTimeout(timer);
      timer = setTimeout(() => void refresh(p), SETTLE);
    });
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}

/** The struck pin as a picture that drawings can hold, and where its silhouette
 * lies in it: left, top and px for each mm. */
export interface PinPicture {
  url: string;
  w: number;
  h: number;
  left: number;
  top: number;
  pxPerMM: number;
}

export const pinPicture = signal<PinPicture | undefined>(undefined);

/** Draws the pin of the sheet into an address while the section is open. */
export function followPin(): () => void {
  const stop = effect(() => {
    const drawn = s.front.value;
    const check = s.shown.value?.check;
    if (!papersOpen.value || !drawn || !check) return;
    const { picture, pixels } = drawn.shot;
    const c = document.createElement('canvas');
    c.width = pixels.width;
    c.height = pixels.height;
    c.getContext('2d')?.putImageData(pixels, 0, 0);
    c.toBlob((blob) => {
      if (!blob || s.front.value !== drawn) return;
      const old = pinPicture.peek();
      const [x0 = 0, y0 = 0] = check.outline;
      pinPicture.value = {
        url: URL.createObjectURL(blob), w: picture.w, h: picture.h,
        left: x0 * picture.scale + picture.dx, top: y0 * picture.scale + picture.dy, pxPerMM: check.scale * picture.scale,
      };
      if (old) URL.revokeObjectURL(old.url);
    });
  });
  return () => {
    stop();
    const old = pinPicture.peek();
    pinPicture.value = undefined;
    if (old) URL.revokeObjectURL(old.url);
  };
}

/** The papers on show are those of an earlier wish. */
export const late = computed(() => papersOpen.value && s.asked.value !== undefined && written.value?.project !== s.asked.value);
