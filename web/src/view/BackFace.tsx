// The pin turned over: mirrored, with its posts called out as seen from the
// back, to be dragged or moved by the arrow keys.
import type { Advice, Check, Place, Post, Stamped } from '../engine/wire.gen';
import type { Drawn } from '../state/store';
import { Canvas } from '../widgets/Canvas';
import { label } from '../words/back';
import { fitIn, mapping, type Box, type Mapping, type Point } from './place';
import { PostHandle } from './PostHandle';
import type { Room } from './useRoom';

interface Props {
  back: Drawn;
  check: Check;
  /** The posts as they are now: moved, or as they were checked. */
  now: { back: Advice; places: Place[] };
  home: Box;
  seen: boolean;
  room: Room;
  /** Width of the callout columns; 0 when there are none. */
  margin: number;
}

/** Places on the back: mm from the left and top as seen from the front, to the sheet and back. */
export interface Behind {
  toSheet: (q: Post) => Point;
  toPost: (at: Point) => Post;
  pxPerMM: number;
}

/** In a picture of the back, x is mirrored about the middle of the outline. */
function behind(check: Check, map: Mapping): Behind {
  const [, y0, x1] = check.outline;
  return {
    toSheet: (q) => map.toSheet(x1 - q.x * check.scale, y0 + q.y * check.scale),
    toPost: (at) => {
      const w = map.toWork(at.x, at.y);
      return { x: (x1 - w.x) / check.scale, y: (w.y - y0) / check.scale };
    },
    pxPerMM: check.scale * map.scale,
  };
}

export function BackFace({ back, check, now, home, seen, room, margin }: Props) {
  const pic = back.shot.picture;
  const box = fitIn(home, pic.w, pic.h);
  const on = behind(check, mapping(pic, box));
  const [cx, cy] = now.back.centre;
  const centre = on.toSheet({ x: cx, y: cy });
  const posts = now.back.posts.map((q, i) => ({ words: now.places[i], at: on.toSheet(q), no: i }));
  // The true-size twin stands at the lower right: of two one above the other the lower is called out at the left.
  const [p, q] = posts;
  const upright = posts.length === 2 && p && q && Math.abs(p.at.x - q.at.x) < Math.abs(p.at.y - q.at.y);
  const order = [...posts].sort((a, b) => (upright ? b.at.y - a.at.y : a.at.x - b.at.x));
  const sides = order.map((q, i) => {
    const left = order.length > 1 && i === 0;
    return { ...q, left, x: left ? margin : room.w - margin };
  });
  return (
    <>
      <div class="pin" style={{ left: `${box.x}px`, top: `${box.y}px`, width: `${box.w}px`, height: `${box.h}px` }}>
        <Canvas shot={back.shot} label={`The back, with ${posts.length === 1 ? 'one post' : `${posts.length} posts`}`} />
      </div>
      {seen ? (
        <>
          <svg class="overlay" aria-hidden="true">
            <g class="leaders">
              <path class="halo" d={cross(centre)} />
              <path d={cross(centre)} />
              {margin > 0 ? sides.map((q) => <path key={q.no} d={`M${q.at.x} ${q.at.y}H${q.x}`} />) : null}
            </g>
            <Fastened back={now.back} on={on} moved={now.back !== check.back} />
            {check.stamp && check.stamp.verdict !== 'holds' && check.stamp.w > 0 ? <Unheld stamp={check.stamp} on={on} /> : null}
          </svg>
          {now.back.bar > 0 ? null : posts.map((q) => (
            <PostHandle key={q.no} no={q.no} at={q.at} back={now.back} on={on} home={box} words={q.words} />
          ))}
          {margin > 0 ? (
            <ul class="post-labels" aria-label="Posts, seen from the back">
              {sides.map((q) => (
                <li key={q.no} class={q.left ? 'left' : 'right'} style={{ left: `${q.left ? 0 : q.x + 8}px`, top: `${q.at.y}px`, width: `${margin - 14}px` }}>
                  <b>{label(now.back)} {posts.length > 1 ? q.words?.no : ''}</b><br />{q.words?.left.inMM} from left<br />{q.words?.top.inMM} from top
                </li>
              ))}
            </ul>
          ) : null}
          <p class="balance" style={{ left: `${centre.x + 14}px`, top: `${centre.y - 14}px` }}>balance</p>
          <p class="behind-note">Seen from behind: left and right are mirrored.{now.back.bar > 0 ? '' : ` Drag a ${label(now.back)}, or move it with the arrow keys.`}</p>
        </>
      ) : null}
    </>
  );
}

/** What must stay hidden, drawn where it moves to, and the length of a bar. */
function Fastened({ back, on, moved }: { back: Advice; on: Behind; moved: boolean }) {
  const half = (back.bar / 2) * on.pxPerMM;
  const r = (back.clutch / 2) * on.pxPerMM;
  return (
    <g class="fastened">
      {back.posts.map((q, i) => {
        const at = on.toSheet(q);
        const shows = (back.shows[i] ?? 0) > 0;
        const [wide, high] = back.bar === 0 ? [r, r] : back.upright ? [r, half] : [half, r];
        if (back.bar > 0) return <rect key={i} class={shows ? 'shows' : ''} x={at.x - wide} y={at.y - high} width={2 * wide} height={2 * high} rx={r} />;
        return moved || shows ? <circle key={i} class={shows ? 'shows' : ''} cx={at.x} cy={at.y} r={r} /> : null;
      })}
    </g>
  );
}

/** Round a stamp that does not hold, as the picture has it. */
function Unheld({ stamp, on }: { stamp: Stamped; on: Behind }) {
  const at = on.toSheet(stamp.middle);
  const [w, h] = [stamp.w * on.pxPerMM, stamp.h * on.pxPerMM];
  return <rect class="unheld" x={at.x - w / 2} y={at.y - h / 2} width={w} height={h} />;
}

const cross = (c: Point) => `M${c.x - 9} ${c.y}h18M${c.x} ${c.y - 9}v18`;
