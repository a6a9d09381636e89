import { render } from 'preact';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './style/index.css';
import { startEngine } from './engine/client';
import { begin, follow } from './state/ask';
import { showFirst } from './state/first';
import { watch } from './state/screen';
import { tell } from './state/store';
import { applyTheme } from './state/theme';
import { App } from './view/App';
import { DEMOS, openDemo } from './view/doors';

const root = document.getElementById('page');
if (root) {
  applyTheme();
  watch();
  render(<App />, root);
  follow();
  const engine = startEngine();
  Promise.all([showFirst(engine, DEMOS.lighthouse).catch(() => false), begin(engine)])
    .then(async ([there]) => {
      if (!there) await openDemo('lighthouse');
    })
    .catch((err: unknown) => {
      tell('The engine could not be started.', err instanceof Error ? err.message : 'Load the page again.');
    });
}
