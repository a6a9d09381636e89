// A small card at the spot that was touched; on a narrow screen it rises from the foot.
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Point } from './place';

interface Props {
  at: Point;
  room: { w: number; h: number };
  title: string;
  onClose: () => void;
  children: ComponentChildren;
}

const WIDE = 300;

export function Popover({ at, room, title, onClose, children }: Props) {
  const ref = useRef<HTMLDivElement>(null);
  const [tall, setTall] = useState(0);
  useLayoutEffect(() => setTall(ref.current?.offsetHeight ?? 0));
  useEffect(() => {
    const before = document.activeElement;
    ref.current?.focus({ preventScroll: true });
    const outside = (e: PointerEvent) => {
      if (e.target instanceof Node && !ref.current?.contains(e.target)) onClose();
    };
    const key = (e: KeyboardEvent) => {
      if (e.key === 'Escape') onClose();
    };
    addEventListener('pointerdown', outside);
    addEventListener('keydown', key);
    return () => {
      removeEventListener('pointerdown', outside);
      removeEventListener('keydown', key);
      if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, []);
  const right = at.x + WIDE + 24 < room.w;
  const left = right ? at.x + 16 : Math.max(8, at.x - WIDE - 16);
  const top = Math.max(0, Math.min(at.y - 40, room.h - tall));
  return (
    <div
      ref={ref}
      class="popover"
      role="dialog"
      aria-label={title}
      tabIndex={-1}
      style={{ left: `${left}px`, top: `${top}px`, width: `${WIDE}px` }}
    >
      <header>
        <h2>{title}</h2>
        <button type="button" class="close" onClick={onClose} aria-label="Close">✕</button>
      </header>
      {children}
    </div>
  );
}
