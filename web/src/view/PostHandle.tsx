// A post that can be taken: dragged with a pointer, or moved by the arrow keys
// in steps of half a millimetre, with Shift of a tenth.
import { useRef } from 'preact/hooks';
import type { Advice, Place } from '../engine/wire.gen';
import { dropPost, leavePosts, movePost, moving } from '../state/posts';
import { label } from '../words/back';
import type { Behind } from './BackFace';
import type { Box, Point } from './place';
import { moved, type Steps } from './useMark';

interface Props {
  no: number;
  at: Point;
  back: Advice;
  on: Behind;
  /** The picture of the pin, which a post does not leave. */
  home: Box;
  words: Place | undefined;
}

const ACTS = 'The arrow keys move it, with Shift in small steps; Enter sets it on a line of symmetry near by.';

const STEP = 0.5;
const FINE = 0.1;

export function PostHandle({ no, at, back, on, home, words }: Props) {
  const grip = useRef<{ dx: number; dy: number; far: boolean; x: number; y: number }>(undefined);
  const many = back.posts.length > 1;
  const name = many ? `${label(back)} ${words?.no ?? no + 1}` : `the ${label(back)}`;
  const within = (p: Point): Point => ({
    x: Math.min(home.x + home.w, Math.max(home.x, p.x)), y: Math.min(home.y + home.h, Math.max(home.y, p.y)),
  });
  const what = `Moved ${name}`;
  const drag = (e: PointerEvent) => {
    const g = grip.current;
    if (!g) return;
    if (!g.far && Math.hypot(e.clientX - g.x, e.clientY - g.y) < 3) return;
    g.far = true;
    movePost(back, no, on.toPost(within({ x: e.clientX - g.dx, y: e.clientY - g.dy })));
  };
  const key = (e: KeyboardEvent) => {
    if (e.key === 'Escape' && moving.value) {
      leavePosts();
      return;
    }
    const steps: Steps = { far: STEP * on.pxPerMM, near: FINE * on.pxPerMM };
    // From where it was last sent, not from where the engine last saw it.
    const sent = moving.value && !moving.value.done ? moving.value.posts[no] : undefined;
    const from = sent ? on.toSheet(sent) : at;
    if (e.key === 'Enter' || e.key === ' ') {
      e.preventDefault();
      movePost(back, no, on.toPost(from));
      void dropPost(what);
      return;
    }
    const to = e.ctrlKey || e.metaKey || e.altKey ? undefined : moved(from, e.key, e.shiftKey, steps, home);
    if (!to) return;
    e.preventDefault();
    movePost(back, no, on.toPost(to), false);
  };
  return (
    <button
      type="button" class="post-handle" style={{ left: `${at.x}px`, top: `${at.y}px` }}
      aria-label={`${name}, ${words?.left.inMM} from the left and ${words?.top.inMM} from the top, seen from behind. ${ACTS}`}
      onPointerDown={(e) => {
        if (e.button !== 0) return;
        e.currentTarget.setPointerCapture(e.pointerId);
        grip.current = { dx: e.clientX - at.x, dy: e.clientY - at.y, far: false, x: e.clientX, y: e.clientY };
      }}
      onPointerMove={drag}
      onPointerUp={() => {
        const far = grip.current?.far;
        grip.current = undefined;
        if (far) void dropPost(what);
      }}
      onPointerCancel={() => { grip.current = undefined; leavePosts(); }}
      onKeyDown={key}
      onKeyUp={(e) => { if (e.key.startsWith('Arrow')) void dropPost(what); }}
      onBlur={() => { if (!grip.current) void dropPost(what); }}
    />
  );
}
