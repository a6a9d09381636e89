// The engine at hand, for the small questions of fields and of the screen.
import { signal } from '@preact/signals';
import type { Engine } from '../engine/client';

export const atHand = signal<Engine | undefined>(undefined);

/** What an error says, as the engine's errors do: what is wrong, and what to do about it. */
export function faultOf(err: unknown): { what: string; do: string } {
  const part = (key: string) => {
    const v = typeof err === 'object' && err !== null ? (err as Record<string, unknown>)[key] : undefined;
    return typeof v === 'string' ? v : '';
  };
  return { what: part('what') || part('message') || 'Something went wrong.', do: part('do') };
}

export function sentenceOf(err: unknown): string {
  const fault = faultOf(err);
  return [fault.what, fault.do].filter(Boolean).join(' ');
}
