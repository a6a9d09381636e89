// Sentences of the page that hang on data.
import type { Check, Design, Finding, Flat, Length, Plating, TrueSize } from '../engine/wire.gen';
import { grams } from './length';

export const ROLE_WORDS = { enamel: 'enamel', metal: 'metal', cutout: 'cut-out', printed: 'printed' } as const;

export const ROLE_MEANS = {
  enamel: 'a sunk area filled with this colour',
  metal: 'raised metal in the plating; not counted as a colour',
  cutout: 'a hole right through the pin',
  printed: 'fine detail printed on top; needs no metal lines',
} as const;

export const MAKING_WORDS = { struck: 'struck', cast: 'cast' } as const;
export const FILL_WORDS = { soft: 'soft enamel', hard: 'hard enamel', none: 'no fill' } as const;

/** What a flat is called on the sheet: metal by what it will look like, not by the ink it was drawn in. */
export function flatTitle(f: Flat, plating: Plating | undefined): string {
  return f.role === 'metal' && plating ? plating.name : f.name;
}

export function roleWords(f: Flat): string {
  const drawn = f.role === 'metal' ? `, drawn in ${f.name}` : '';
  return `${ROLE_WORDS[f.role]}${drawn}${f.locked ? ' · kept' : ''}`;
}

export const plural = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;

export function enamelCount(flats: readonly Flat[]): number {
  return flats.filter((f) => f.role === 'enamel').length;
}

export function coloursSays(flats: readonly Flat[], included: number | undefined): string {
  const n = enamelCount(flats);
  if (included === undefined) return `${plural(n, 'enamel')}.`;
  const over = n - included;
  if (over > 0) return `${plural(n, 'enamel')}; ${over} more than the ${included} in the price.`;
  return `${plural(n, 'enamel')}, all within the ${included} in the price.`;
}

export function metalSays(d: Design, plating: Plating | undefined, findings: readonly Finding[]): string {
  const bad = findings.filter((f) => f.verdict !== 'holds').length;
  const how = `${MAKING_WORDS[d.making]} in ${plating?.name ?? 'metal'}, ${FILL_WORDS[d.fill]}`;
  return bad === 0 ? `${capital(how)}; every line and area holds.` : `${capital(how)}; ${plural(bad, 'trouble spot')} to look at.`;
}

export function backSays(c: Check): string {
  const { back, fixings } = c;
  const name = fixings.find((f) => f.fastening === back.fastening)?.name;
  const held = back.byHand || !name || back.fastening === '' ? plural(back.chosen, 'post') : name;
  return `${capital(held)}${back.byHand ? ' placed by hand' : ''}; the pin weighs about ${grams(back.weight)}.`;
}

/** "32 mm · 1.26 in". */
export function both(l: Length): string {
  return `${l.inMM} · ${l.inInches}`;
}

export function sightSays(c: Check | undefined, size: TrueSize | undefined): string {
  const pin = c ? c.shown.inMM : 'The pin';
  return size ? `${pin}; ${size.says}.` : `${pin}.`;
}

export function eachWords(c: Check): string {
  return c.quoteProblem ? 'no price' : c.quote.eachSays;
}

export function capital(s: string): string {
  return s.charAt(0).toUpperCase() + s.slice(1);
}

export const VERDICT = {
  holds: { mark: '✓', word: 'Can be made' },
  fails: { mark: '✕', word: 'Not yet' },
  'cannot-tell': { mark: '?', word: 'Cannot tell' },
} as const;
