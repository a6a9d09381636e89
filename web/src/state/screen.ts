// The screen this page is on, watched. The engine says how large things are on
// it; the page keeps the checks and draws.
import { computed, effect, signal } from '@preact/signals';
import { SMALL } from '../engine/queue';
import type { Match, Report } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import { drawnPerMM, worthAsking, type Answered } from './truesize';

function read(): Report {
  const area = document.documentElement;
  return {
    vendor: navigator.vendor,
    w: screen.width,
    h: screen.height,
    ratio: devicePixelRatio,
    pinch: visualViewport?.scale ?? 1,
    // Where pinching narrows innerWidth, the root element keeps the page's width.
    inner: [Math.max(innerWidth, area.clientWidth), Math.max(innerHeight, area.clientHeight)],
    outer: [outerWidth, outerHeight],
  };
}

const KEEP = 'badgewright.true-size';

/** Where a browser keeps nothing, a check lasts as long as the page. */
let unkept = '';

function recall(): string {
  try {
    return localStorage.getItem(KEEP) ?? unkept;
  } catch {
    return unkept;
  }
}

function remember(text: string): void {
  unkept = text;
  try {
    localStorage.setItem(KEEP, text);
  } catch {
    // A full or forbidden store: then it is not there the next time.
  }
}

const here = signal<Report>(read());
const answered = signal<Answered | undefined>(undefined);

/** What the engine said of this screen; nothing before its first word. */
export const trueSize = computed(() => answered.value?.size);

/** CSS px for one mm here; nothing before the engine's first word. */
export const perMM = computed(() => (answered.value ? drawnPerMM(answered.value, here.value) : undefined));

async function ask(report: Report, match?: Match): Promise<string | undefined> {
  const engine = atHand.value;
  if (!engine) return 'The engine is not there yet. Try again in a moment.';
  const kept = recall();
  try {
    const options = { lane: SMALL + (match ? 'match' : 'screen') };
    const { answer } = await engine.call('screen', { report, kept, ...(match ? { match } : {}) }, options);
    if (match) remember(answer.keep);
    // A check was made meanwhile: this answer does not know of it.
    else if (recall() !== kept) return ask(report);
    answered.value = { report, size: answer };
    return undefined;
  } catch (err) {
    return sentenceOf(err);
  }
}

/** Keeps a check made on this screen; says what is wrong with one that cannot be. */
export function matched(match: Match): Promise<string | undefined> {
  return ask(here.value, match);
}

/** Follows moves to another screen, page zoom and pinch: called once. */
export function watch(): void {
  const look = () => {
    here.value = read();
  };
  for (const event of ['resize', 'focus']) addEventListener(event, look);
  visualViewport?.addEventListener('resize', look);
  watchRatio(look);
  let last: Report | undefined;
  effect(() => {
    const now = here.value;
    if (!atHand.value || (last && !worthAsking(last, now))) return;
    last = now;
    void ask(now);
  });
}

/** A move to a finer screen need not change the size of the window. */
function watchRatio(look: () => void): void {
  matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', () => {
    look();
    watchRatio(look);
  }, { once: true });
}
