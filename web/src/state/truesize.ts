// True size on a screen: how many device pixels make a millimetre.

/** ISO/IEC 7810 ID-1, the bank card. */
export const CARD = { w: 85.6, h: 53.98 } as const;

/** CSS says 96 px to the inch; screens seldom agree, so this is only a guess. */
export const CSS_PX_PER_MM = 96 / 25.4;

export interface Screen {
  /** Screen size in CSS px as the browser reports it. */
  w: number;
  h: number;
  /** Device px for one CSS px, page zoom included. */
  dpr: number;
  /** Pinch zoom: visualViewport.scale. */
  pinch: number;
}

export interface Checked {
  /** Device px for one mm. */
  perMM: number;
}

export type Sureness = 'checked' | 'guess';

/** Page zoom changes both the reported size and the ratio, and leaves their product alone. */
export function screenKey(s: Screen): string {
  return `${Math.round(s.w * s.dpr)}x${Math.round(s.h * s.dpr)}`;
}

/** CSS px for one mm, so that the thing is its true size in the hand. */
export function cssPxPerMM(s: Screen, checked: Checked | undefined): number {
  const css = checked ? checked.perMM / s.dpr : CSS_PX_PER_MM;
  return css / s.pinch;
}

/** What a card drawn `cssWidth` CSS px wide that matches a real card tells. */
export function checkFromCard(s: Screen, cssWidth: number): Checked {
  return { perMM: (cssWidth * s.pinch * s.dpr) / CARD.w };
}

/** What a ruled line of `mm` drawn `cssLength` CSS px long tells. */
export function checkFromRuler(s: Screen, cssLength: number, mm: number): Checked {
  return { perMM: (cssLength * s.pinch * s.dpr) / mm };
}

const KEEP = 'badgewright.true-size';

type Store = Pick<Storage, 'getItem' | 'setItem'>;

/** Screens from a watch to a wall lie between these, device px per mm. */
const COARSEST = 0.5;
const FINEST = 60;

export function recall(store: Store | undefined, key: string): Checked | undefined {
  const v = readAll(store)[key];
  return typeof v === 'number' && v > COARSEST && v < FINEST ? { perMM: v } : undefined;
}

export function remember(store: Store | undefined, key: string, c: Checked): void {
  try {
    store?.setItem(KEEP, JSON.stringify({ ...readAll(store), [key]: c.perMM }));
  } catch {
    // A full or forbidden store only means that the check must be done again.
  }
}

function readAll(store: Store | undefined): Record<string, unknown> {
  try {
    const v: unknown = JSON.parse(store?.getItem(KEEP) ?? '{}');
    return typeof v === 'object' && v !== null ? (v as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
