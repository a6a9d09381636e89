// The drawing as brought, small: what is clear in it is seen to be clear.
import type { Thumb } from '../state/thumbs';
import { Canvas } from './Canvas';

export function ThumbView({ thumb }: { thumb: Thumb | undefined }) {
  if (!thumb) return <span class="thumb" aria-hidden="true" />;
  const { w, h, clear, words } = thumb.about;
  const k = 1 / Math.max(w, h);
  return (
    <span class="thumb">
      <span class={clear ? 'thumb-picture clear' : 'thumb-picture'} style={{ width: `${100 * w * k}%`, height: `${100 * h * k}%` }}>
        <Canvas shot={thumb} label={words} />
      </span>
    </span>
  );
}
