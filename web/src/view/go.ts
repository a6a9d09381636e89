/** Opens a section of the column and brings it into view. */
export function go(section: string): void {
  const el = document.getElementById(section);
  if (!(el instanceof HTMLDetailsElement)) return;
  el.open = true;
  el.querySelector('summary')?.focus({ preventScroll: true });
  el.scrollIntoView({ block: 'start', behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth' });
}
