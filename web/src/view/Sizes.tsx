// The section of the sizes that hold, kept up while it is on the page.
import { useEffect } from 'preact/hooks';
import { SizesPanel } from '../panels/SizesPanel';
import { designOf, withDesign, withSize } from '../state/project';
import { followSizes, sizes, think, thought, thoughtOf, withThought } from '../state/sizes';
import * as s from '../state/store';
import { mm } from '../words/length';
import { LIMIT_WORDS } from '../words/sizes';

export function Sizes() {
  useEffect(followSizes, []);
  const d = s.design.value;
  if (!d) return null;
  return (
    <SizesPanel
      sizes={sizes.value?.sizes} size={d.size} limits={d.limits} thought={thought.value} answer={thoughtOf.value}
      onSize={(size) => s.change((p) => withSize(p, size), `Size ${mm(size, 1)}`)}
      onDrag={(size) => s.drag((p) => withSize(p, size))}
      onDrop={() => s.letGo(`Size ${mm(s.design.value?.size.mm ?? d.size.mm, 1)}`)}
      onThink={(t) => void think(t)}
      onUse={(t) => {
        thought.value = undefined;
        s.change((p) => {
          const q = designOf(p);
          return q ? withDesign(p, { limits: withThought(q.limits, t) }) : p;
        }, `The ${LIMIT_WORDS[t.key]} is ${mm(t.mm, 2)}`);
      }}
    />
  );
}
