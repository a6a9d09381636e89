import { useEffect, useRef } from 'preact/hooks';

interface Props {
  shot: { pixels: ImageData } | undefined;
  label: string;
  class?: string;
}

/** Lays a picture's pixels down as they are; its size on the page is the style's business. */
export function Canvas({ shot, label, class: cls }: Props) {
  const ref = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const c = ref.current;
    if (!c || !shot) return;
    c.width = shot.pixels.width;
    c.height = shot.pixels.height;
    c.getContext('2d')?.putImageData(shot.pixels, 0, 0);
  }, [shot]);
  return <canvas ref={ref} class={cls} role="img" aria-label={label} width={1} height={1} />;
}
