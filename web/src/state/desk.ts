// The engine at hand, for the small questions of fields and of the screen.
import { signal } from '@preact/signals';
import type { Engine } from '../engine/client';

export const atHand = signal<Engine | undefined>(undefined);

/** What an error says, as the engine's errors do: what is wrong, and what to do about it. */
export function sentenceOf(err: unknown): string {
  const part = (key: string) => {
    const v = typeof err === 'object' && err !== null ? (err as Record<string, unknown>)[key] : undefined;
    return typeof v === 'string' ? v : '';
  };
  return [part('what') || part('message') || 'Something went wrong.', part('do')].filter(Boolean).join(' ');
}
