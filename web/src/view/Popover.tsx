// A small card at the spot that was touched; on a narrow screen it rises from the foot.
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { cardAt, type Point } from './place';

interface Props {
  at: Point;
  room: { w: number; h: number };
  /** A place that is to be seen beside the card. */
  bare?: Point | undefined;
  title: string;
  onClose: () => void;
  children: ComponentChildren;
}

const WIDE = 300;

export function Popover({ at, room, bare, title, onClose, children }: Props) {
  const ref = useRef<HTMLDivElement>(null);
  const [tall, setTall] = useState(0);
  useLayoutEffect(() => setTall(ref.current?.offsetHeight ?? 0));
  // Undone with the card itself: a tap that follows at once is no tap beside it.
  useLayoutEffect(() => {
    const before = document.activeElement;
    const card = ref.current;
    card?.focus({ preventScroll: true });
    // A card at the foot of a narrow screen would hide what it speaks of.
    if (card && getComputedStyle(card).position === 'fixed') card.closest('.stage')?.scrollIntoView({ block: 'start' });
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
  const { x, y } = cardAt(at, { w: WIDE, h: tall }, room, bare);
  return (
    <div
      ref={ref}
      class="popover"
      role="dialog"
      aria-label={title}
      tabIndex={-1}
      style={{ left: `${x}px`, top: `${y}px`, width: `${WIDE}px` }}
    >
      <header>
        <h2>{title}</h2>
        <button type="button" class="close" onClick={onClose} aria-label="Close">✕</button>
      </header>
      {children}
    </div>
  );
}
