// What each colour buys an eye that looks at the pin from where it is looked
// at. It takes a while to work out, so it comes after everything else and is
// stopped when something newer is wished for.
import { effect, signal, untracked } from '@preact/signals';
import type { Engine } from '../engine/client';
import type { Buys, Project } from '../engine/wire.gen';
import { atHand } from './desk';
import { gaze, type Gaze } from './eye';
import { besideOf } from './items';
import * as s from './store';

export const seenBuys = signal<{ project: Project; gaze: Gaze; buys: Buys } | undefined>(undefined);

/** The section of colours is open: nobody else wants to know. */
export const coloursOpen = signal(false);

/** The other questions go first, ms. */
const SETTLE = 500;

/** Keeps it up with the project: called once. */
export function followSeenBuys(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopper: AbortController | undefined;
  const stop = effect(() => {
    const project = s.asked.value;
    const g = gaze.value;
    const engine = atHand.value;
    const ready = coloursOpen.value && !s.dragged.value && s.buys.value?.project === project;
    untracked(() => {
      clearTimeout(timer);
      stopper?.abort();
      const had = seenBuys.value;
      if (!project || !g || !engine || !ready || (had?.project === project && had.gaze === g)) return;
      const mine = (stopper = new AbortController());
      timer = setTimeout(() => void ask(engine, project, g, mine.signal), SETTLE);
    });
  });
  return () => {
    clearTimeout(timer);
    stopper?.abort();
    stop();
  };
}

async function ask(engine: Engine, project: Project, g: Gaze, stop: AbortSignal): Promise<void> {
  try {
    const beside = await besideOf(project);
    const { answer } = await engine.call('buys', { picked: s.picked(project), ...beside, viewing: g.viewing, noticed: g.thresholds.noticed }, { lane: 'buys seen', signal: stop });
    if (!stop.aborted) seenBuys.value = { project, gaze: g, buys: answer };
  } catch {
    // Stopped for something newer; or the check has said already what is wrong.
  }
}

/** What each colour buys, with what is seen of it once that is known. */
export function buysNow(): Buys | undefined {
  const plain = s.buys.value;
  return plain && seenBuys.value?.project === plain.project ? seenBuys.value.buys : plain?.buys;
}
