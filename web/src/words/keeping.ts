// How it stands with keeping, in a sentence.
import type { Standing } from '../state/keep';

export function standingSays(st: Standing, name: string): string {
  switch (st.kind) {
    case 'nothing':
      return 'The example is not kept until you change it or bring a drawing of your own.';
    case 'kept':
      return `“${name}” is kept in this browser as you work, with its undo history.`;
    case 'elsewhere':
      return `“${name}” is open in another tab. What you change here is not kept.`;
    case 'refused':
      return st.full
        ? 'The browser has no room left for what you make. Save the project to a file.'
        : 'This browser keeps nothing for this page. Save the project to a file before you close it.';
  }
}

/** When something was changed, as people say it: today by the clock, else by the day. */
export function changedSays(at: number, now: number): string {
  const [then, today] = [new Date(at), new Date(now)];
  const time = then.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  if (then.toDateString() === today.toDateString()) return `today, ${time}`;
  return then.toLocaleDateString([], { day: 'numeric', month: 'long', year: then.getFullYear() === today.getFullYear() ? undefined : 'numeric' });
}
