// A pin that is planned and not drawn yet: pure changes, and how a device keeps it.
import type { Design, Hello, Limits, Opened, Plan } from '../engine/wire.gen';

/** What is wished for in the sheet before drawing. */
export interface Wish {
  /** Of the longer side. */
  mm: number;
  making: Design['making'];
  fill: Design['fill'];
  limits: Limits;
  /** The artist's own canvas, px; without one, that which is recommended. */
  own: { w: number; h: number } | undefined;
}

/** What a device keeps of a plan: the limits come with making and fill. */
export type Kept = Pick<Wish, 'mm' | 'making' | 'fill'>;

const MAKINGS: readonly string[] = ['struck', 'cast'] satisfies Design['making'][];
const FILLS: readonly string[] = ['soft', 'hard', 'none'] satisfies Design['fill'][];

/** Reads a plan as a device keeps it; what is none counts as no plan. */
export function readKept(text: string | null): Kept | undefined {
  try {
    const v: unknown = JSON.parse(text ?? '');
    if (typeof v !== 'object' || v === null) return undefined;
    const { mm, making, fill } = v as Record<string, unknown>;
    if (typeof mm !== 'number' || !(mm > 0) || !isMaking(making) || !isFill(fill)) return undefined;
    return { mm, making, fill };
  } catch {
    return undefined;
  }
}

const isMaking = (v: unknown): v is Design['making'] => typeof v === 'string' && MAKINGS.includes(v);
const isFill = (v: unknown): v is Design['fill'] => typeof v === 'string' && FILLS.includes(v);

export function keptText({ mm, making, fill }: Kept): string {
  return JSON.stringify({ mm, making, fill });
}

export function usualLimits(hello: Hello | undefined, making: Design['making'], fill: Design['fill']): Limits | undefined {
  return hello?.limits.find((l) => l.making === making && l.fill === fill)?.limits;
}

/** The limits that a shop works by: its own where the design on the sheet is made the same way. */
function limitsFor(hello: Hello, design: Design | undefined, making: Design['making'], fill: Design['fill']): Limits | undefined {
  if (design?.making === making && design.fill === fill) return design.limits;
  return usualLimits(hello, making, fill);
}

/** What the sheet starts with: what was planned before, else a usual pin. */
export function firstWish(hello: Hello, design: Design | undefined, kept: Kept | undefined): Wish | undefined {
  const usual = hello.blank.order.designs[0];
  const mm = kept?.mm ?? usual?.size.mm;
  const making = kept?.making ?? usual?.making;
  const fill = kept?.fill ?? usual?.fill;
  if (!mm || !making || !fill) return undefined;
  const limits = limitsFor(hello, design, making, fill);
  return limits && { mm, making, fill, limits, own: undefined };
}

/** Another making or fill brings its limits. */
export function remade(wish: Wish, change: Partial<Pick<Wish, 'making' | 'fill'>>, hello: Hello, design: Design | undefined): Wish {
  const next = { ...wish, ...change };
  return { ...next, limits: limitsFor(hello, design, next.making, next.fill) ?? wish.limits };
}

export function planOf({ mm, making, fill, limits, own }: Wish): Plan {
  return { size: mm, making, fill, limits, w: own?.w ?? 0, h: own?.h ?? 0 };
}

/** A drawing that was opened starts as it was planned. */
export function asPlanned(o: Opened, kept: Kept, hello: Hello | undefined, words: string): Opened {
  const { mm, making, fill } = kept;
  const limits = usualLimits(hello, making, fill) ?? o.design.limits;
  return { ...o, notes: [words, ...o.notes], design: { ...o.design, size: { mm, by: 'longest' }, making, fill, limits } };
}
