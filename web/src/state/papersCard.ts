// The backing card as it is laid out by hand: its pin, words and picture are
// dragged, and what is dragged becomes a step when it is let go.
import { effect, signal } from '@preact/signals';
import { decodeRaster, WHOLE } from '../engine/decode';
import { decodeSVG } from '../engine/svg';
import type { BackingCard, CardText, Header, LaidCard } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import { laid, withCard } from './papers';
import * as s from './store';

/** What can be taken on a card. */
export type Held = { what: 'pin' } | { what: 'picture' } | { what: 'text'; index: number };

/** What is being moved, and how far, mm. */
export const holding = signal<{ held: Held; dx: number; dy: number } | undefined>(undefined);

export const sameHeld = (a: Held, b: Held) => a.what === b.what && (a.what !== 'text' || b.what !== 'text' || a.index === b.index);

/** How far something is moved just now. */
export function movedBy(held: Held): { dx: number; dy: number } {
  const h = holding.value;
  return h && sameHeld(h.held, held) ? h : { dx: 0, dy: 0 };
}

/** The card on show, or the one the tool began with. */
export const cardNow = (): BackingCard | undefined => s.asked.value?.plans?.card ?? laid.value?.answer.card;

export function changeCard(change: (c: BackingCard) => BackingCard, what: string): void {
  const now = cardNow();
  if (now) s.change((p) => withCard(p, change(p.plans?.card ?? now)), what);
}

/** Without a key: what is left out is as usual. */
export function without<K extends keyof BackingCard>(c: BackingCard, key: K): BackingCard {
  const { [key]: _, ...rest } = c;
  return rest as BackingCard;
}

export const tenth = (v: number) => Math.round(v * 10) / 10;

const MOVED = { pin: 'Moved the pin on its card', picture: 'Moved the picture on the card', text: 'Moved a line on the card' } as const;

/** Puts what was moved where it is. */
export function letGoHeld(): void {
  const h = holding.value;
  holding.value = undefined;
  if (!h || (h.dx === 0 && h.dy === 0)) return;
  const { held, dx, dy } = h;
  changeCard((c) => movedCard(c, held, dx, dy), MOVED[held.what]);
}

export function movedCard(c: BackingCard, held: Held, dx: number, dy: number): BackingCard {
  const l = laid.value?.answer.laid;
  if (held.what === 'picture') return c.picture ? { ...c, picture: { ...c.picture, x: tenth(c.picture.x + dx), y: tenth(c.picture.y + dy) } } : c;
  if (held.what === 'text') return withText(c, held.index, (t) => ({ ...t, x: tenth(t.x + dx), y: tenth(t.y + dy) }));
  if (!l) return c;
  return { ...c, pin: [tenth(l.pin.x + l.pinW / 2 + dx), tenth(l.pin.y + l.pinH / 2 + dy)] };
}

export function withText(c: BackingCard, index: number, change: (t: CardText) => CardText): BackingCard {
  return { ...c, texts: (c.texts ?? []).map((t, i) => (i === index ? change(t) : t)) };
}

/** Turns a card the other way up: words go to the right of the pin where it lies,
 * and below it where it stands. */
export function turnedCard(c: BackingCard, w: number, h: number, across: boolean, pinW: number, safe: number): BackingCard {
  const turned = refitted({ ...without(c, 'pin'), across }, w, h, h, w);
  const left = Math.max(safe, (h / 2 - pinW) / 2) + pinW;
  const x = tenth(across ? (left + h - safe) / 2 : h / 2);
  return { ...turned, texts: (turned.texts ?? []).map((t) => (t.align ? t : { ...t, x })) };
}

/** Moves words and picture to where they stood on a card of another size. */
export function refitted(c: BackingCard, w: number, h: number, newW: number, newH: number): BackingCard {
  const texts = (c.texts ?? []).map((t) => ({ ...t, x: tenth((t.x / w) * newW), y: tenth(newH - (h - t.y)) }));
  return { ...without(c, 'pin'), texts, ...(c.picture ? { picture: { ...c.picture, x: tenth((c.picture.x / w) * newW), y: tenth((c.picture.y / h) * newH) } } : {}) };
}

export function addText(c: BackingCard, w: number, h: number): BackingCard {
  const last = c.texts?.at(-1);
  const y = last ? Math.min(h - 5, last.y + 5) : h - 12;
  const fresh: CardText = { words: 'your words', points: 8, x: last?.x ?? w / 2, y: tenth(y), rgb: last?.rgb ?? { r: 34, g: 34, b: 34 }, ...(last?.align ? { align: last.align } : {}) };
  return { ...c, texts: [...(c.texts ?? []), fresh] };
}

/** A picture that covers a card with its bleed, in its middle. */
export function covering(pw: number, ph: number, w: number, h: number, bleed: number): { x: number; y: number; wide: number } {
  const wide = Math.max(w + 2 * bleed, ((h + 2 * bleed) * pw) / ph);
  return { x: tenth((w - wide) / 2), y: tenth((h - (wide * ph) / pw) / 2), wide: Math.ceil(wide * 10) / 10 };
}

/** A small one in the upper left of the safe margin. */
export function small(w: number, safe: number): { x: number; y: number; wide: number } {
  return { x: safe, y: safe, wide: tenth(w / 4) };
}

/** Why the last picture was not taken; '' when it was. */
export const pictureFault = signal('');

/** Long side at which a card's picture is decoded, px. */
const LONG_SIDE = 2400;

function smaller(h: Header): Header {
  // A vector drawing has no pixels of its own; a raster is not blown up.
  const k = (h.format === 'svg' ? LONG_SIDE : Math.min(LONG_SIDE, Math.max(h.w, h.h))) / Math.max(h.workW, h.workH);
  return { ...h, space: 'srgb', workW: Math.max(1, Math.round(h.workW * k)), workH: Math.max(1, Math.round(h.workH * k)) };
}

/** The card as it is asked for, once it is laid out. */
function settled(): Promise<LaidCard> {
  return new Promise((done) => {
    const stop = effect(() => {
      const got = laid.value;
      if (got && got.project === s.asked.value) {
        queueMicrotask(() => stop());
        done(got.answer.laid);
      }
    });
  });
}

/** Reads a picture and lays it over the card. */
export async function bringPicture(file: File): Promise<void> {
  const engine = atHand.value;
  if (!engine) return;
  try {
    const start = new Uint8Array(await file.slice(0, s.hello.value?.headerBytes).arrayBuffer());
    const head = smaller((await engine.call('header', { fileName: file.name, size: file.size }, { bytes: start })).answer);
    const { w, h, bytes } = head.format === 'svg' ? await decodeSVG(file, head, WHOLE) : await decodeRaster(file, head, WHOLE);
    const got = await engine.call('cardpicture', { w, h }, { bytes });
    if (!got.bytes) return;
    const { answer } = got;
    const l = await settled();
    const picture = { ...answer, data: base64(got.bytes), ...covering(answer.w, answer.h, l.w, l.h, l.bleed) };
    pictureFault.value = '';
    changeCard((c) => ({ ...c, picture }), 'A picture on the card');
  } catch (err) {
    pictureFault.value = sentenceOf(err);
  }
}

function base64(bytes: Uint8Array): string {
  let text = '';
  const step = 0x8000;
  for (let i = 0; i < bytes.length; i += step) text += String.fromCharCode(...bytes.subarray(i, i + step));
  return btoa(text);
}
