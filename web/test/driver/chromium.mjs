import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { puppet } from './puppet.mjs';

/** Debian's Chromium. As root it runs without its own sandbox, which it refuses
 * there. With a page zoom it has a window of its own instead of a viewport. */
export async function chromium({ flags = [], zoom, offline, keeps } = {}) {
  const args = ['--disable-gpu', '--hide-scrollbars', '--force-color-profile=srgb', '--disable-dev-shm-usage', '--enable-precise-memory-info', ...flags];
  if (process.getuid?.() === 0) args.push('--no-sandbox');
  const options = { offline, keeps, browser: 'chrome', executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args, defaultViewport: { width: 1280, height: 900 } };
  if (zoom === undefined) return puppet(options);
  const userDataDir = zoomed(zoom);
  const driver = await puppet({ ...options, userDataDir, defaultViewport: null, args: [...args, '--window-size=1280,900'] });
  const close = driver.close.bind(driver);
  driver.close = async () => {
    await close();
    rmSync(userDataDir, { recursive: true, force: true });
  };
  return driver;
}

/** A profile in which every page is zoomed; Chromium counts zoom in powers of 1.2. */
function zoomed(zoom) {
  const dir = mkdtempSync(join(tmpdir(), 'zoomed-'));
  mkdirSync(join(dir, 'Default'));
  writeFileSync(join(dir, 'Default/Preferences'), JSON.stringify({ partition: { default_zoom_level: { x: Math.log(zoom) / Math.log(1.2) } } }));
  return dir;
}
