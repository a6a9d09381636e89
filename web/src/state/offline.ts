// Whether the page works with the network off, and whether a new version of it waits.
import { effect, signal } from '@preact/signals';
import { flush } from './keep';
import { engineState } from './store';

export const offline = signal<'no' | 'ready'>('no');

/** A new version of the page that is wholly here and waits to be used. */
export const newer = signal(false);

let waiting: ServiceWorker | undefined;
let accepted = false;

/** The rest of the page is fetched when the engine has been ready for this time, ms: what is
 * done first has the machine for itself. */
const FIRST_THINGS = 3000;

/** Fetches the whole page into the browser, once the first screen stands. */
export function startOffline(): void {
  if (!import.meta.env.PROD || !navigator.serviceWorker) return;
  const stop = effect(() => {
    if (engineState.value !== 'ready') return;
    setTimeout(register, FIRST_THINGS);
    queueMicrotask(() => stop());
  });
}

function register(): void {
  const { serviceWorker } = navigator;
  const controlled = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (accepted) location.reload();
    // Another tab took the new version: this one goes on with what it has until it is loaded again.
    else if (controlled) newer.value = true;
  });
  serviceWorker.register(new URL('./sw.js', document.baseURI), { updateViaCache: 'none' }).then(watch, () => {
    // No place for it here, as in a private window: the page works while the network does.
  });
}

function watch(reg: ServiceWorkerRegistration): void {
  if (reg.active) offline.value = 'ready';
  if (reg.waiting && reg.active) offer(reg.waiting);
  const coming = (worker: ServiceWorker | null) => worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && reg.active) offer(worker);
    if (worker.state === 'activated') offline.value = 'ready';
  });
  coming(reg.installing);
  reg.addEventListener('updatefound', () => coming(reg.installing));
  reg.active?.postMessage('tidy');
}

function offer(worker: ServiceWorker): void {
  waiting = worker;
  newer.value = true;
}

/** Goes over to the new version, once all is kept. */
export async function takeNewer(): Promise<void> {
  await flush();
  accepted = true;
  if (waiting?.state === 'installed') waiting.postMessage('use');
  else location.reload();
}
