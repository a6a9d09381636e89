// The pin turned over: mirrored, with its posts called out as seen from the back.
import type { Check } from '../engine/wire.gen';
import type { Drawn } from '../state/store';
import { mm } from '../words/length';
import { Canvas } from './Canvas';
import { fitIn, mapping, type Box } from './place';

interface Props {
  back: Drawn;
  check: Check;
  home: Box;
  seen: boolean;
}

export function BackFace({ back, check, home, seen }: Props) {
  const pic = back.shot.picture;
  const box = fitIn(home, pic.w, pic.h);
  const map = mapping(pic, box);
  const place = (xmm: number, ymm: number) => {
    const x = (check.outline[0] ?? 0) + xmm * check.scale;
    const y = (check.outline[1] ?? 0) + ymm * check.scale;
    return map.toSheet(check.flats.w - x, y);
  };
  const centre = place(check.back.centre[0] ?? 0, check.back.centre[1] ?? 0);
  const posts = check.back.posts.map((q) => ({ ...q, at: place(q.x, q.y) })).sort((a, b) => a.at.x - b.at.x);
  return (
    <>
      <div class="pin" style={{ left: `${box.x}px`, top: `${box.y}px`, width: `${box.w}px`, height: `${box.h}px` }}>
        <Canvas shot={back.shot} label={`The back, with ${posts.length === 1 ? 'one post' : `${posts.length} posts`}`} />
      </div>
      {seen ? (
        <>
          <svg class="overlay" aria-hidden="true">
            <path class="centre" d={`M${centre.x - 9} ${centre.y}h18M${centre.x} ${centre.y - 9}v18`} />
            {posts.map((q, i) => (
              <path key={i} class="post-leader" d={`M${q.at.x} ${q.at.y}L${q.at.x + (i % 2 ? 60 : -60)} ${Math.max(26, box.y - 4)}`} />
            ))}
          </svg>
          <ul class="post-labels" aria-label="Posts, seen from the back">
            {posts.map((q, i) => (
              <li key={i} style={{ left: `${q.at.x + (i % 2 ? 60 : -60)}px`, top: `${Math.max(26, box.y - 4)}px` }}>
                post {i + 1}<br />{mm(check.w - q.x)} from left<br />{mm(q.y)} from top
              </li>
            ))}
          </ul>
          <p class="balance" style={{ left: `${centre.x + 14}px`, top: `${centre.y}px` }}>balance</p>
        </>
      ) : null}
    </>
  );
}
