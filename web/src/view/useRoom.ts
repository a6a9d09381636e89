import { useEffect, useRef, useState } from 'preact/hooks';

export interface Room {
  w: number;
  h: number;
}

/** The size of an element in CSS px, followed. */
export function useRoom<E extends HTMLElement>() {
  const ref = useRef<E>(null);
  const [room, setRoom] = useState<Room>({ w: 0, h: 0 });
  useEffect(() => {
    const el = ref.current;
    if (!el) return undefined;
    const watch = new ResizeObserver(() => setRoom({ w: el.clientWidth, h: el.clientHeight }));
    watch.observe(el);
    return () => watch.disconnect();
  }, []);
  return { ref, room };
}
