// One project is kept by one tab at a time. The browser's locks say which; where it has
// none, the revision that is kept with a project still stops one tab from writing over
// another.

/** How long a tab that is just closing may take to let go, ms. */
const LETTING_GO = 400;

let release: (() => void) | undefined;

const nameOf = (id: string) => `badgewright project ${id}`;

/** Takes a project for this tab; false when another has it. `lost` is told when it is taken away later. */
export function hold(id: string, lost: () => void, how: { steal?: boolean; wait?: number } = {}): Promise<boolean> {
  letGo();
  if (!navigator.locks) return Promise.resolve(true);
  return new Promise((resolve) => {
    const stopper = new AbortController();
    const timer = setTimeout(() => stopper.abort(), how.wait ?? LETTING_GO);
    let had = false;
    navigator.locks.request(nameOf(id), how.steal ? { steal: true } : { signal: stopper.signal }, () => {
      clearTimeout(timer);
      had = true;
      resolve(true);
      return new Promise<void>((done) => (release = done));
    }).catch(() => {
      if (had) lost();
      else resolve(false);
    });
  });
}

export function letGo(): void {
  release?.();
  release = undefined;
}

/** Between tabs: one asks the other to let go of a project. */
const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('badgewright');

export const askFor = (id: string) => channel?.postMessage({ askFor: id });

export function whenAsked(yieldUp: (id: string) => void): void {
  channel?.addEventListener('message', ({ data }: MessageEvent<{ askFor?: string }>) => {
    if (data.askFor) yieldUp(data.askFor);
  });
}
