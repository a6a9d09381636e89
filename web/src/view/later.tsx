// Rooms of the page that are fetched once the first screen stands.
import { signal, type Signal } from '@preact/signals';
import { h, type ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { shown, tell } from '../state/store';

type Module<P> = { default: ComponentType<P> };

/** A room that comes when the sheet shows its first answers; until then its
 * place is empty. */
export function later<P extends object>(load: () => Promise<Module<P>>): ComponentType<P> {
  const room: Signal<ComponentType<P> | undefined> = signal(undefined);
  let asked = false;
  const fetchOnce = () => {
    if (asked) return;
    asked = true;
    load().then(
      (m) => (room.value = m.default),
      () => {
        asked = false;
        tell('A part of the page could not be fetched.', 'Check the connection; it is tried again with your next change.');
      },
    );
  };
  return function Later(props: P) {
    const there = shown.value;
    const Room = room.value;
    useEffect(() => {
      if (there) fetchOnce();
    }, [there]);
    return Room ? h(Room, props) : null;
  };
}
