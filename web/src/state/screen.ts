// The screen this page is on, watched; and whether true size was checked here.
import { computed, signal } from '@preact/signals';
import { cssPxPerMM, recall, remember, screenKey, type Checked, type Screen } from './truesize';

function read(): Screen {
  return { w: screen.width, h: screen.height, dpr: devicePixelRatio, pinch: visualViewport?.scale ?? 1 };
}

function store(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}

export const here = signal<Screen>(read());
const checks = signal(0);

export const checked = computed(() => {
  void checks.value;
  return recall(store(), screenKey(here.value));
});

export const perMM = computed(() => cssPxPerMM(here.value, checked.value));
export const sure = computed(() => checked.value !== undefined);

export function keep(c: Checked): void {
  remember(store(), screenKey(here.value), c);
  checks.value++;
}

/** Follows moves to another screen, page zoom and pinch: called once. */
export function watch(): void {
  const look = () => {
    here.value = read();
  };
  addEventListener('resize', look);
  visualViewport?.addEventListener('resize', look);
}
