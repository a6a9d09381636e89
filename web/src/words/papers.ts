// Sentences of the papers.
import type { Check, LaidCard, Project, Quote } from '../engine/wire.gen';
import { mm } from './length';
import { plural } from './words';

export interface Standing {
  check: Check | undefined;
  project: Project;
  quote: Quote | undefined;
}

/** What still stands in the way of sending, a sentence each. */
export function inTheWay({ check, project, quote }: Standing): string[] {
  const all: string[] = [];
  const open = check?.findings.filter((f) => f.verdict !== 'holds').length ?? 0;
  if (open > 0) all.push(`${plural(open, 'trouble spot')} ${open === 1 ? 'is' : 'are'} still open; the papers tell the maker of ${open === 1 ? 'it' : 'them'}.`);
  if (check?.proposal) all.push('Metal lines are proposed and wait for your yes under Metal.');
  if (check?.stampProblem) all.push(check.stampProblem);
  if (project.order.designs.some((d) => d.versions.some((v) => v.quantity < 1))) all.push('A version has no quantity yet.');
  const needs = quote?.needs.length ?? 0;
  if (needs > 0) all.push(`${plural(needs, 'price')} of your list ${needs === 1 ? 'is' : 'are'} not known yet.`);
  return all;
}

/** The section in a sentence. */
export function papersSays(st: Standing, name: string): string {
  if (!st.check) return 'Reading the pin …';
  const way = inTheWay(st);
  if (way.length === 0) return `All you send of ${name} is ready: spec sheet, layers, message, lists, card and pictures.`;
  const [first = ''] = way;
  const more = way.length > 1 ? ` ${plural(way.length - 1, 'more thing')} below.` : '';
  return `Ready to send, but ${first.charAt(0).toLowerCase()}${first.slice(1)}${more}`;
}

/** Where something on a card stands, for those who do not see it. */
export const placedWords = (x: number, y: number) => `${mm(x, 1)} from the left, ${mm(y, 1)} from the top`;

export const MOVES = 'The arrow keys move it by half a millimetre, with Shift by a tenth.';

/** A card's pin in words. */
export function pinOnCard(l: LaidCard): string {
  return `The pin, its middle ${placedWords(l.pin.x + l.pinW / 2, l.pin.y + l.pinH / 2)}. ${MOVES}`;
}

/** Where the holes are, from the upper left of the card. */
export function holesWords(l: LaidCard): string {
  if (l.holes.length === 0) return 'Nothing goes through the card: no hole is needed.';
  const [first] = l.holes;
  const places = l.holes.map((h) => `No ${h.no} at ${mm(h.x, 1)} from the left and ${mm(h.y, 1)} from the top`).join('; ');
  return `${l.holes.length === 1 ? 'One hole' : `${l.holes.length} holes`} of ${mm(first?.across ?? 0, 2)}, seen from the front: ${places}. Posts are numbered as from behind.`;
}
