import { puppet } from './puppet.mjs';

/** Debian's Firefox ESR, over WebDriver BiDi. */
export function firefox() {
  return puppet({ browser: 'firefox', executablePath: process.env.FIREFOX ?? '/usr/bin/firefox-esr', defaultViewport: { width: 1280, height: 900 } });
}
