import { puppet } from './puppet.mjs';

/** Debian's Chromium. As root it runs without its own sandbox, which it refuses there. */
export function chromium({ flags = [] } = {}) {
  const args = ['--disable-gpu', '--hide-scrollbars', '--force-color-profile=srgb', '--disable-dev-shm-usage', '--enable-precise-memory-info', ...flags];
  if (process.getuid?.() === 0) args.push('--no-sandbox');
  return puppet({ browser: 'chrome', executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args, defaultViewport: { width: 1280, height: 900 } });
}
