import { render } from 'preact';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './style/index.css';
import { startEngine } from './engine/engine';
import { begin, follow } from './state/ask';
import { followPosts } from './state/posts';
import { keptFlag, showFirst } from './state/first';
import { watch } from './state/screen';
import { tell } from './state/store';
import { applyTheme } from './state/theme';
import { App } from './view/App';
import { openDemo } from './view/doors';
import { DEMOS } from './words/demos';

/** The engine waits so long at most for the first screen, ms. */
const PATIENCE = 1500;

const later = (ms: number) => new Promise((done) => setTimeout(done, ms));

const root = document.getElementById('page');
if (root) {
  applyTheme();
  watch();
  render(<App />, root);
  follow();
  followPosts();
  let shown = () => {};
  const engine = startEngine(Promise.race([new Promise<void>((done) => (shown = done)), later(PATIENCE)]));
  const kept = keptFlag();
  const first = (kept ? import('./state/keep').then((k) => k.resume(kept)) : Promise.resolve(false))
    .then((there) => there || showFirst(engine, DEMOS.lighthouse))
    .catch(() => false);
  void first.then(shown);
  Promise.all([first, begin(engine)])
    .then(async ([there]) => {
      if (!there) await openDemo('lighthouse');
    })
    .catch((err: unknown) => {
      tell('The engine could not be started.', err instanceof Error ? err.message : 'Load the page again.');
    });
}
