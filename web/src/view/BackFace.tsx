// The pin turned over: mirrored, with its posts called out as seen from the back.
import type { Check } from '../engine/wire.gen';
import type { Drawn } from '../state/store';
import { Canvas } from '../widgets/Canvas';
import { fitIn, mapping, type Box, type Point } from './place';
import type { Room } from './useRoom';

interface Props {
  back: Drawn;
  check: Check;
  home: Box;
  seen: boolean;
  room: Room;
  /** Width of the callout columns; 0 when there are none. */
  margin: number;
}

export function BackFace({ back, check, home, seen, room, margin }: Props) {
  const pic = back.shot.picture;
  const box = fitIn(home, pic.w, pic.h);
  const map = mapping(pic, box);
  const place = (xmm: number, ymm: number) => {
    const x = (check.outline[0] ?? 0) + xmm * check.scale;
    const y = (check.outline[1] ?? 0) + ymm * check.scale;
    return map.toSheet(check.flats.w - x, y);
  };
  const centre = place(check.back.centre[0] ?? 0, check.back.centre[1] ?? 0);
  const posts = check.back.posts.map((q, i) => ({ words: check.places[i], at: place(q.x, q.y) })).sort((a, b) => a.at.x - b.at.x);
  const sides = posts.map((q, i) => {
    const left = posts.length > 1 && i === 0;
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
              {margin > 0 ? sides.map((q, i) => <path key={i} d={`M${q.at.x} ${q.at.y}H${q.x}`} />) : null}
              {sides.map((q, i) => <circle key={i} cx={q.at.x} cy={q.at.y} r={3.2} />)}
            </g>
          </svg>
          {margin > 0 ? (
            <ul class="post-labels" aria-label="Posts, seen from the back">
              {sides.map((q, i) => (
                <li key={i} class={q.left ? 'left' : 'right'} style={{ left: `${q.left ? 0 : q.x + 8}px`, top: `${q.at.y}px`, width: `${margin - 14}px` }}>
                  <b>post {i + 1}</b><br />{q.words?.left.inMM} from left<br />{q.words?.top.inMM} from top
                </li>
              ))}
            </ul>
          ) : null}
          <p class="balance" style={{ left: `${centre.x + 14}px`, top: `${centre.y + 12}px` }}>balance</p>
        </>
      ) : null}
    </>
  );
}

const cross = (c: Point) => `M${c.x - 9} ${c.y}h18M${c.x} ${c.y - 9}v18`;
