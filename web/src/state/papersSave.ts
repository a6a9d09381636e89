// Papers as files, and the message on the clipboard.
import { signal } from '@preact/signals';
import type { Reply } from '../engine/client';
import type { ListKind, PaperFile, Project, ShopGround } from '../engine/wire.gen';
import { bill } from './bill';
import { setOf, startOf } from './calendar';
import { atHand, faultOf } from './desk';
import { withFonts } from './fonts';
import { about } from './handed';
import { anchor, askedAll, placesOf, planOf } from './papers';
import { cardNow } from './papersCard';
import { designOf, priceListOf, versionOf, type Place } from './project';
import { saveFile } from './save';
import { learn } from './selling';
import { leftPlan } from './sellingPlan';
import * as s from './store';
import { dayOf } from './today';

/** What is being made, by the name of its button; '' for nothing. */
export const making = signal('');

/** Makes one paper at a time; what goes wrong is told on the sheet. */
export async function make(name: string, job: (p: Project) => Promise<string | undefined>): Promise<void> {
  const p = s.asked.value;
  if (!p || making.value) return;
  making.value = name;
  try {
    const said = await job(p);
    if (said) s.said.value = said;
  } catch (err) {
    const fault = faultOf(err);
    s.tell(fault.what, fault.do);
  } finally {
    making.value = '';
  }
}

export function keep(answer: PaperFile, bytes: Uint8Array<ArrayBuffer> | undefined): string | undefined {
  if (!bytes) return undefined;
  saveFile(new Blob([bytes], { type: answer.type }), answer.fileName);
  if (answer.notes.length > 0) s.tell(`Saved ${answer.fileName}.`, answer.notes.join(' '));
  return `Saved ${answer.fileName}: ${answer.words}`;
}

const engine = () => {
  const e = atHand.value;
  if (!e) throw new Error('The engine is not there yet. Try again in a moment.');
  return e;
};

const refuse = (what: string, todo: string) => Object.assign(new Error(what), { what, do: todo });

async function askList(p: Project, kind: ListKind): Promise<Reply<'list'>> {
  const base = { kind, name: (p.order.designs.length > 1 && p.order.name) || s.design.value?.name || '', units: planOf(p).units ?? ('' as const) };
  const e = engine();
  switch (kind) {
    case 'colours':
    case 'spots':
      return e.call('list', { ...base, asked: await askedAll(p) });
    case 'quote': {
      const { quote, problem } = bill.value;
      if (!quote) throw refuse(problem || 'There is no quote yet.', 'Choose or type a price list under Order.');
      const { answer } = await e.call('orderitems', { project: s.picked(p).project });
      return e.call('list', { ...base, quote, order: answer.order, maker: priceListOf(p)?.name ?? '' });
    }
    default: {
      const list = priceListOf(p);
      const known = await learn();
      if (!list || !known) throw refuse('There is no price list.', 'Choose or type one under Order.');
      const { answer: items } = await e.call('orderitems', { project: s.picked(p).project });
      const plan = leftPlan(p, known.selling, s.at.value);
      const grams = plan.grams || (s.shown.value?.check.back.weight ?? 0);
      const { answer } = await e.call('left', { plan: { ...plan, grams, currency: plan.currency || list.currency }, priced: { list, order: items.order } });
      const wrong = answer.faults[0];
      if (wrong) throw refuse(wrong.what, 'Correct it under Order, “Left after costs”.');
      return e.call('list', { ...base, selling: answer.plan });
    }
  }
}

export const saveList = (kind: ListKind) =>
  make(kind, async (p) => {
    const { answer, bytes } = await askList(p, kind);
    return keep(answer, bytes);
  });

/** The order's days as a calendar file: as they were set, or as the tool begins. */
export const saveDays = () =>
  make('days', async (p) => {
    const e = engine();
    const today = dayOf(new Date());
    const year = Number(today.slice(0, 4));
    const set = setOf(p) ?? startOf((await e.call('orderusual', { from: year, to: year + 1, countries: [] })).answer, today);
    const list = priceListOf(p);
    const { answer: items } = await e.call('orderitems', { project: s.picked(p).project });
    const { answer } = await e.call('days', { schedule: { ...set, today }, ...(list ? { priced: { list, order: items.order } } : {}) });
    const got = await e.call('ics', { name: s.design.value?.name ?? '', schedule: answer.schedule });
    const wrong = [...answer.faults, ...got.answer.faults][0];
    if (wrong) throw refuse(wrong.what, 'Correct it in the calendar under Order.');
    if (!got.bytes) return undefined;
    saveFile(new Blob([got.bytes], { type: got.answer.type }), got.answer.fileName);
    return `Saved ${got.answer.fileName}`;
  });

export const saveCard = (pdf: boolean) =>
  make(pdf ? 'card pdf' : 'card svg', async (p) => {
    const card = cardNow();
    if (!card) return undefined;
    await withFonts();
    const at = s.at.value;
    const { answer, bytes } = await about(anchor(p, at), at, 'cardfile', { card, pdf, today: dayOf(new Date()) });
    return keep(answer, bytes);
  });

export const saveSpec = () =>
  make('spec', async (p) => {
    await withFonts();
    const at = s.at.value;
    const { paper, units, note } = planOf(p);
    const ask = { format: paper ?? ('a4' as const), units: units ?? ('' as const), note: note ?? '', today: dayOf(new Date()) };
    const { answer, bytes } = await about(anchor(p, at), at, 'specsheet', ask);
    return keep(answer, bytes);
  });

export const saveLayers = (pdf: boolean) =>
  make(pdf ? 'layers pdf' : 'layers svg', async (p) => {
    if (pdf) await withFonts();
    const at = s.at.value;
    const { answer, bytes } = await about(anchor(p, at), at, 'layers', { pdf, today: dayOf(new Date()) });
    return keep(answer, bytes);
  });

/** What a version's picture is called. */
function pictureName(p: Project, at: Place): string {
  const d = designOf(p, at);
  const v = versionOf(p, at);
  return d && d.versions.length > 1 ? `${d.name} ${v?.name ?? ''}` : (d?.name ?? '');
}

/** The pin's own long side for a picture of so many px in all. */
export const pinSide = (pixels: number, ground: ShopGround | undefined) => Math.max(16, Math.min(4096, Math.round(pixels * (1 - 2 * (ground?.margin ?? 0)))));

export async function pictureOf(p: Project, at: Place, pixels: number, ground: ShopGround | undefined) {
  const e = engine();
  const pin = await e.call('picture', { picked: s.pickedAt(p, at), view: 'struck', longSide: pinSide(pixels, ground) }, { lane: `paper picture ${pixels}` });
  if (!pin.bytes) throw new Error('The picture did not come.');
  const { w, h } = pin.answer;
  return e.call('shoppicture', { w, h, name: pictureName(p, at), ...(ground ? { ground } : {}) }, { bytes: pin.bytes, lane: `shop ${pixels}` });
}

async function savePicture(p: Project, at: Place, pixels: number, ground: ShopGround | undefined): Promise<string> {
  const { answer, bytes } = await pictureOf(p, at, pixels, ground);
  if (bytes) saveFile(new Blob([bytes], { type: 'image/png' }), answer.fileName);
  return `${answer.fileName}, ${answer.words}`;
}

/** Saves the picture of the version on the sheet, or of every version. */
export const savePictures = (all: boolean, pixels: number, ground: ShopGround | undefined) =>
  make(`${all ? 'all' : 'one'} ${ground ? 'shop' : 'cut-out'}`, async (p) => {
    const said: string[] = [];
    for (const at of all ? placesOf(p) : [s.at.value]) said.push(await savePicture(p, at, pixels, ground));
    return `Saved ${said.join('; ')}`;
  });

/** Puts a text on the clipboard; says in words what became of it. */
export async function copied(text: string): Promise<string> {
  try {
    await navigator.clipboard.writeText(text);
    return 'Copied: paste it into a mail or a form, and fill the gaps.';
  } catch {
    return 'The browser does not let the page copy. Mark the text and copy it by hand.';
  }
}

