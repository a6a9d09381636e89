// A thing on the sheet that can be taken: dragged with a pointer, or moved by the
// arrow keys in steps of half a millimetre, with Shift of a tenth.
import { useRef } from 'preact/hooks';
import type { Box, Point } from './place';
import { moved, type Steps } from './useMark';

interface Grip {
  /** Where it is seen, px of the sheet. */
  at: Point;
  /** Where it was last sent, while it moves: keys may come faster than it is seen to. */
  sent: () => Point | undefined;
  steps: Steps;
  /** What it does not leave. */
  home: Box;
  onMove: (to: Point, byKey: boolean) => void;
  onDrop: () => void;
  onLeave: () => void;
}

/** A pointer may tremble this far before it drags, px. */
const TREMBLE = 3;

export function useGrip({ at, sent, steps, home, onMove, onDrop, onLeave }: Grip) {
  const grip = useRef<{ dx: number; dy: number; far: boolean; x: number; y: number }>(undefined);
  const within = (p: Point): Point => ({
    x: Math.min(home.x + home.w, Math.max(home.x, p.x)), y: Math.min(home.y + home.h, Math.max(home.y, p.y)),
  });
  return {
    onPointerDown: (e: PointerEvent) => {
      if (e.button !== 0 || !(e.currentTarget instanceof Element)) return;
      e.currentTarget.setPointerCapture(e.pointerId);
      grip.current = { dx: e.clientX - at.x, dy: e.clientY - at.y, far: false, x: e.clientX, y: e.clientY };
    },
    onPointerMove: (e: PointerEvent) => {
      const g = grip.current;
      if (!g) return;
      if (!g.far && Math.hypot(e.clientX - g.x, e.clientY - g.y) < TREMBLE) return;
      g.far = true;
      onMove(within({ x: e.clientX - g.dx, y: e.clientY - g.dy }), false);
    },
    onPointerUp: () => {
      const far = grip.current?.far;
      grip.current = undefined;
      if (far) onDrop();
    },
    onPointerCancel: () => { grip.current = undefined; onLeave(); },
    onKeyDown: (e: KeyboardEvent) => {
      if (e.key === 'Escape' && sent()) {
        grip.current = undefined;
        onLeave();
        return;
      }
      // From where it was last sent, not from where the engine last saw it.
      const to = e.ctrlKey || e.metaKey || e.altKey ? undefined : moved(sent() ?? at, e.key, e.shiftKey, steps, home);
      if (!to) return;
      e.preventDefault();
      onMove(to, true);
    },
    onKeyUp: (e: KeyboardEvent) => { if (e.key.startsWith('Arrow')) onDrop(); },
    onBlur: () => { if (!grip.current) onDrop(); },
  };
}
