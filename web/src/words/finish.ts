// Words for what sets a fill or a metal apart.
import type { Finish } from '../engine/wire.gen';

export const FINISH_WORDS: Record<Finish, string> = {
  '': 'plain', glitter: 'glitter', pearl: 'pearl', translucent: 'translucent', glow: 'glows in the dark', sandblasted: 'sandblasted', textured: 'textured',
};

export const FINISH_MEANS: Record<Finish, string> = {
  '': '',
  glitter: 'Flakes in the fill; makers usually charge for it.',
  pearl: 'A soft sheen; makers usually charge for it.',
  translucent: 'The metal floor shows through, often with a struck pattern; makers usually charge for it.',
  glow: 'Looks paler by day; makers usually charge for it.',
  sandblasted: 'Matt and even.',
  textured: 'Hammered; for large faces, since dents need room.',
};
