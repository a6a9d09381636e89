// The proof in hand: read, laid, compared and shown.
import { batch, computed, signal } from '@preact/signals';
import type { Deviation, HeldAgainst, Picture, Project, ProofHow, ProofLaid, ProofRound, ProofView, Said } from '../engine/wire.gen';
import { faultOf, sentenceOf } from './desk';
import { about, gone } from './handed';
import { freshName, photos, takeIn } from './photos';
import { designOf, versionOf } from './project';
import { readProof, type ProofShot } from './proofFile';
import * as r from './proofs';
import * as s from './store';
import { dayOf } from './today';

/** A proof as compared in this visit. */
export interface Compared {
  id: string;
  project: Project;
  shot: ProofShot;
  laid: ProofLaid;
  result: HeldAgainst;
  /** The proof laid like the pin, and the pin in the proof's metal. */
  looks?: Readonly<Record<ProofView, s.Shot>>;
}

export const compared = signal<Compared | undefined>(undefined);
/** What is being done, when something is. */
export const work = signal<s.Work | undefined>(undefined);
export const fault = signal('');
const picked = signal<string | undefined>(undefined);

export const all = computed(() => (s.asked.value ? r.proofsAt(s.asked.value, s.at.value) : []));
/** The proof in hand: the one picked, else the last that came. */
export const inHand = computed<ProofRound | undefined>(() => all.value.find((o) => o.id === picked.value) ?? all.value.at(-1));
/** The comparison of the proof in hand, of this visit. */
export const now = computed(() => (compared.value?.id === inHand.value?.id ? compared.value : undefined));
/** The pin was changed since the proof was held against it. */
export const late = computed(() => {
  const [c, p] = [now.value, s.asked.value];
  return Boolean(c && p && (designOf(c.project, s.at.value) !== designOf(p, s.at.value) || versionOf(c.project, s.at.value) !== versionOf(p, s.at.value)));
});

/** Proofs as read in this visit, and what the engine calls them. */
const shots = new Map<string, ProofShot>();
const keys = new Map<string, string>();
/** PDFs of more than one page, to take another. */
const papers = new Map<string, File>();

/** How large a proof and the pin are drawn over each other, px. */
const LOOK_SIDE = 1000;

/** Runs one thing at a time, stoppable; a fault is said and changes nothing. */
async function doing<T>(what: string, run: (o: { signal: AbortSignal; onProgress: (share: number, step: string) => void }) => Promise<T>): Promise<T | undefined> {
  work.value?.stop?.();
  const stopper = new AbortController();
  const mine: s.Work = { doing: what, share: 0, stop: () => stopper.abort() };
  work.value = mine;
  fault.value = '';
  const still = () => work.value?.stop === mine.stop;
  try {
    return await run({ signal: stopper.signal, onProgress: (share, step) => { if (still()) work.value = { ...mine, doing: step || what, share }; } });
  } catch (err) {
    if (!stopper.signal.aborted) fault.value = sentenceOf(err);
    return undefined;
  } finally {
    if (still()) work.value = undefined;
  }
}

type Options = { signal: AbortSignal; onProgress: (share: number, step: string) => void };

/** A new proof, or a photograph of a finished pin: read, found, compared and kept. */
export async function bring(file: File, photo: boolean): Promise<void> {
  await doing(`Reading ${file.name}`, async (o) => {
    const first = await readProof(file, file.name);
    const p = s.asked.value;
    if (!p) return;
    const round = r.freshProof(p, s.at.value, freshName('proof-'), file.name, dayOf(new Date()), photo);
    const { shot, got } = await whereItLies(p, round, file, first, o);
    if (shot.pages > 1) papers.set(round.id, file);
    takeIn([{ id: round.id, blob: await keptBlob(file, shot) }]);
    s.change((q) => r.withProof(q, r.compared(round, got.laid.fit, got.result.differences, new Map())), `Brought ${file.name}`);
    picked.value = round.id;
    show(round.id, shot, got);
    await look(round.id, o);
  });
}

interface Lain {
  shot: ProofShot;
  got: Got;
}

/** Proofs of more pages than this are leafed through by hand. */
const MOST_PAGES = 12;

/** The page on which the pin lies well, else the first on which it was laid at
 * all; a file without any is refused as its first page is. */
async function whereItLies(p: Project, round: ProofRound, file: File, first: ProofShot, o: Options): Promise<Lain> {
  let best: Lain | undefined;
  let refused: unknown;
  for (let page = 1; page <= Math.min(first.pages, MOST_PAGES); page++) {
    const shot = page === 1 ? first : await readProof(file, file.name, page);
    keys.delete(round.id);
    try {
      const got = await hold(p, round, shot, o);
      if (got.result.fit.good) return { shot, got };
      best ??= { shot, got };
    } catch (err) {
      if (o.signal.aborted) throw err;
      refused ??= err;
    }
  }
  if (!best) throw refused;
  keys.set(round.id, best.got.laid.proof);
  return best;
}

/** A page of a PDF is kept as its picture. */
async function keptBlob(file: Blob, shot: ProofShot): Promise<Blob> {
  if (!shot.perMM) return file;
  const canvas = document.createElement('canvas');
  canvas.width = shot.pixels.width;
  canvas.height = shot.pixels.height;
  canvas.getContext('2d')?.putImageData(shot.pixels, 0, 0);
  return new Promise((done, fail) => canvas.toBlob((b) => (b ? done(b) : fail(new Error('This page could not be kept as a picture.'))), 'image/png'));
}

interface Got {
  project: Project;
  laid: ProofLaid;
  result: HeldAgainst;
}

/** Lays the pin on a proof and compares the two. */
async function hold(p: Project, round: ProofRound, shot: ProofShot, o: Options): Promise<Got> {
  const laid = await lay(p, round, shot, o);
  keys.set(round.id, laid.proof);
  const { answer: result } = await about(p, s.at.value, 'proofdiff', asked(round, laid.proof), o);
  return { project: p, laid, result };
}

const asked = ({ said, tolerances, photo, white }: ProofRound, proof: string) => ({
  proof, said, ...(tolerances ? { tolerances } : {}), ...(photo ? { photo } : {}), ...(white ? { white } : {}),
});

async function lay(p: Project, { id, how }: ProofRound, shot: ProofShot, o: Options): Promise<ProofLaid> {
  const key = keys.get(id);
  try {
    if (key) return (await about(p, s.at.value, 'prooffit', { proof: key, how }, o)).answer;
  } catch (err) {
    if (!gone(err)) throw err;
  }
  const { width: w, height: h, data } = shot.pixels;
  return (await about(p, s.at.value, 'proofopen', { w, h, how }, o, () => new Uint8Array(data.slice().buffer))).answer;
}

function show(id: string, shot: ProofShot, got: Got): void {
  shots.set(id, shot);
  compared.value = { id, shot, ...got };
}

async function look(id: string, o: Options): Promise<void> {
  const c = compared.value;
  if (c?.id !== id) return;
  const of = async (view: ProofView): Promise<s.Shot> => {
    const { answer, bytes } = await about(c.project, s.at.value, 'prooflook', { proof: c.laid.proof, view, longSide: LOOK_SIDE }, o);
    if (!bytes) throw new Error('The picture did not come.');
    return { picture: answer, pixels: pixelsOf(answer, bytes) };
  };
  const shown = await of('shown');
  const asked = await of('asked');
  if (compared.value === c) compared.value = { ...c, looks: { shown, asked } };
}

const pixelsOf = ({ w, h }: Picture, bytes: Uint8Array<ArrayBuffer>) => new ImageData(new Uint8ClampedArray(bytes.buffer, bytes.byteOffset, 4 * w * h), w, h);

/** Holds a proof against the pin as it is now, laid or told otherwise; what was
 * decided stays with the differences that stay. */
export async function again(id: string, change: Partial<Pick<ProofRound, 'how' | 'said' | 'tolerances' | 'white'>>, what: string): Promise<void> {
  await doing('Comparing', async (o) => {
    const p = s.asked.value;
    const before = p && r.proofsOf(p).find((q) => q.id === id);
    const shot = before && (await shotOf(before));
    if (!p || !before || !shot) return;
    const got = await hold(p, { ...before, ...change }, shot, o);
    const same = r.carried(before.differences.length > 0 ? (await pairs(before.differences, got.result.differences, false)).pairs : []);
    batch(() => {
      if (what) s.change((q) => r.changedProof(q, id, (now) => r.compared({ ...now, ...change }, got.laid.fit, got.result.differences, same)), what);
      show(id, shot, { ...got, project: s.asked.value ?? p });
    });
    await look(id, o);
  });
}

/** The picture of a proof: of this visit, or as it was kept. */
async function shotOf(round: ProofRound): Promise<ProofShot | undefined> {
  const here = shots.get(round.id);
  if (here) return here;
  const kept = photos.value.get(round.id);
  if (!kept) {
    fault.value = 'The picture of this proof is not kept here. Bring its file again as a new proof; what was found before stays listed.';
    return undefined;
  }
  return readProof(kept.blob, round.name ?? 'proof');
}

/** Takes a proof in hand, and holds it against the pin when this visit has not. */
export async function take(id: string): Promise<void> {
  picked.value = id;
  if (now.value || work.value) return;
  await again(id, {}, '');
}

/** Pages of the PDF that a proof is from; 1 when it is from none, or it is not at hand. */
export const pagesOf = (id: string) => (papers.has(id) ? (shots.get(id)?.pages ?? 1) : 1);

export async function takePage(id: string, page: number): Promise<void> {
  const file = papers.get(id);
  if (!file) return;
  const shot = await doing('Reading the page', () => readProof(file, file.name, page));
  if (!shot) return;
  shots.set(id, shot);
  keys.delete(id);
  takeIn([{ id, blob: await keptBlob(file, shot) }]);
  await again(id, { how: {} }, `Page ${page} of the proof`);
}

export function layBy(id: string, how: ProofHow, what: string): void {
  void again(id, { how }, what);
}

export function say(id: string, change: (said: Said) => Said, what: string): void {
  const round = inHand.value;
  if (round?.id === id) void again(id, { said: change(round.said) }, what);
}

/** Two lists held against each other: two rounds, or two makers. */
export async function pairs(first: Deviation[], other: Deviation[], makers: boolean) {
  const p = s.asked.value;
  if (!p) throw new Error('Nothing is open.');
  return (await about(p, s.at.value, 'proofpairs', { makers, first, other }, { lane: `proof pairs ${makers}` })).answer;
}

/** A fault of something small, in words. */
export function tell(err: unknown): void {
  const f = faultOf(err);
  s.tell(f.what, f.do);
}
