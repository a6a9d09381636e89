// A post that can be taken: dragged with a pointer, or moved by the arrow keys
// in steps of half a millimetre, with Shift of a tenth.
import type { Advice, Place } from '../engine/wire.gen';
import { dropPost, leavePosts, movePost, moving } from '../state/posts';
import { label } from '../words/back';
import type { Behind } from './BackFace';
import type { Box, Point } from './place';
import { useGrip } from './useGrip';

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
  const many = back.posts.length > 1;
  const name = many ? `${label(back)} ${words?.no ?? no + 1}` : `the ${label(back)}`;
  const what = `Moved ${name}`;
  const sent = () => {
    const m = moving.value;
    const last = m && !m.done ? m.posts[no] : undefined;
    return last && on.toSheet(last);
  };
  const { onKeyDown, ...grip } = useGrip({
    at, sent, home, steps: { far: STEP * on.pxPerMM, near: FINE * on.pxPerMM },
    onMove: (to, byKey) => movePost(back, no, on.toPost(to), !byKey),
    onDrop: () => void dropPost(what),
    onLeave: leavePosts,
  });
  const key = (e: KeyboardEvent) => {
    if (e.key !== 'Enter' && e.key !== ' ') {
      onKeyDown(e);
      return;
    }
    e.preventDefault();
    movePost(back, no, on.toPost(sent() ?? at));
    void dropPost(what);
  };
  return (
    <button
      type="button" class="post-handle" style={{ left: `${at.x}px`, top: `${at.y}px` }}
      aria-label={`${name}, ${words?.left.inMM} from the left and ${words?.top.inMM} from the top, seen from behind. ${ACTS}`}
      {...grip} onKeyDown={key}
    />
  );
}
