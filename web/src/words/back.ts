import type { Advice } from '../engine/wire.gen';

const LABELS: Record<Advice['fastening'], string> = { '': 'post', magnet: 'magnet', bar: 'bar', screw: 'screw' };

/** What one thing that holds the pin is called. */
export const label = (b: Advice) => LABELS[b.fastening];
