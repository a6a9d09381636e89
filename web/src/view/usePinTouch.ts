// A tap on the pin asks what is there, and so does Enter at the mark that the
// arrow keys move; a hold shows the drawing as brought.
import { useRef } from 'preact/hooks';
import type { Box } from './place';
import { useMark, type Steps } from './useMark';

/** A press longer than this is a hold, ms: longer than a tap, shorter than patience. */
const HOLD = 320;

/** A finger may tremble this far and still be a tap, px. */
const TREMBLE = 8;

export function usePinTouch(room: Box, steps: Steps, onHold: (on: boolean) => void, onTap: (x: number, y: number) => void) {
  const { mark, setMark, onKey } = useMark(room, steps);
  const press = useRef<{ x: number; y: number; timer: ReturnType<typeof setTimeout>; held: boolean }>(undefined);
  const end = () => {
    const p = press.current;
    press.current = undefined;
    if (!p) return undefined;
    clearTimeout(p.timer);
    if (p.held) onHold(false);
    return p;
  };
  return {
    mark,
    onPointerDown: (e: PointerEvent) => {
      if (e.button !== 0) return;
      setMark(undefined);
      const timer = setTimeout(() => {
        if (!press.current) return;
        press.current.held = true;
        onHold(true);
      }, HOLD);
      press.current = { x: e.clientX, y: e.clientY, timer, held: false };
    },
    onPointerUp: (e: PointerEvent) => {
      const p = end();
      const stage = e.currentTarget instanceof HTMLElement ? e.currentTarget.closest('.stage') : null;
      if (!p || p.held || !stage || Math.hypot(e.clientX - p.x, e.clientY - p.y) > TREMBLE) return;
      const r = stage.getBoundingClientRect();
      onTap(e.clientX - r.left, e.clientY - r.top);
    },
    onPointerCancel: end,
    onPointerLeave: end,
    onContextMenu: (e: Event) => e.preventDefault(),
    onKeyDown: (e: KeyboardEvent) => {
      if (onKey(e)) return;
      if (e.key === 'Enter' && mark) {
        e.preventDefault();
        onTap(mark.x, mark.y);
      }
      if (e.key !== ' ') return;
      e.preventDefault();
      if (!e.repeat) onHold(true);
    },
    onKeyUp: (e: KeyboardEvent) => {
      if (e.key === ' ') onHold(false);
    },
    onBlur: () => onHold(false),
  };
}
