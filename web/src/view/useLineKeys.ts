// The keys of a line that is being drawn, wherever on the page the focus is.
import { useLayoutEffect, useRef } from 'preact/hooks';

interface Acts {
  onUndo: () => void;
  onCancel: () => void;
}

/** Gives the layer that has the focus while the line is drawn; where the focus
 * was before, it is again afterwards. Escape gives the line up; Backspace and
 * the undo chord take its last point back, and no step of the project. */
export function useLineKeys(acts: Acts) {
  const layer = useRef<HTMLDivElement>(null);
  const now = useRef(acts);
  now.current = acts;
  useLayoutEffect(() => {
    const before = document.activeElement;
    layer.current?.closest('.stage')?.scrollIntoView({ block: 'nearest' });
    layer.current?.focus({ preventScroll: true });
    const key = (e: KeyboardEvent) => {
      const act = actOf(e, now.current);
      if (!act) return;
      e.preventDefault();
      e.stopPropagation();
      act();
    };
    addEventListener('keydown', key, { capture: true });
    return () => {
      removeEventListener('keydown', key, { capture: true });
      if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, []);
  return layer;
}

function actOf(e: KeyboardEvent, { onUndo, onCancel }: Acts): (() => void) | undefined {
  if (e.target instanceof HTMLInputElement && e.target.type === 'text') return undefined;
  const chord = (e.ctrlKey || e.metaKey) && !e.shiftKey && !e.altKey;
  if (e.key === 'Escape') return onCancel;
  return e.key === 'Backspace' || (chord && e.key.toLowerCase() === 'z') ? onUndo : undefined;
}
