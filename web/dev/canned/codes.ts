// A maker's list beside the canned colours, as the engine would answer.
import type { CodeMatch, Codes, ColourEntry, ColourList, ColourListRead, Nearness } from '../../src/engine/wire.gen';
import { rgbOf } from '../../src/state/project';
import type { MakerListProps } from '../../src/widgets/MakerList';
import { FLATS } from './answers';

const entry = (code: string, name: string, hex: string): ColourEntry => ({ code, name, rgb: rgbOf(hex) ?? { r: 0, g: 0, b: 0 } });

export const COLOUR_LIST: ColourList = {
  name: 'Skerry Light enamels (invented)',
  entries: [
    entry('SL-55', 'Night harbour', '#1d3f5e'), entry('SL-54', 'Keeper’s blue', '#1f4e8c'), entry('SL-62', 'Bottle glass', '#2f7f6b'),
    entry('SL-12', 'Sailcloth', '#efe6cf'), entry('SL-32', 'Signal red', '#c4332b'), entry('SL-21', 'Lantern yellow', '#f2be3e'),
  ],
};

const match = (index: number, de: number, distance: Nearness, lean = ''): CodeMatch => ({
  entry: COLOUR_LIST.entries[index] ?? entry('?', '', '#000000'), index, de, distance, lean,
});

const row = (i: number, ...nearest: CodeMatch[]) => {
  const f = FLATS[i];
  return { flat: f?.id ?? i, name: f?.name ?? '', rgb: f?.rgb ?? { r: 0, g: 0, b: 0 }, nearest };
};

const taken = match(4, 2.1, 'close', 'a little stronger');

export const CODES: Codes = {
  rows: [
    row(0, match(0, 0, 'same'), match(1, 12.4, 'another colour')),
    row(1, match(2, 5.8, 'clearly different', 'greener'), match(0, 21.2, 'another colour')),
    row(2, match(3, 2.2, 'close', 'a little darker'), match(5, 24.9, 'another colour')),
    { ...row(3, taken), taken: { code: 'SL-32', named: 'Signal red', recoloured: false, match: taken } },
    row(4, match(5, 0.9, 'same'), match(3, 23, 'another colour')),
  ],
  shared: [{ code: 'SL-55', flats: [0, 1], words: 'Night blue and sea green fall on SL-55: made so, they are one and the same enamel.' }],
  apart: [{ flat: 0, match: match(0, 0, 'same') }, { flat: 1, match: match(2, 5.8, 'clearly different') }],
  apartWords: 'With a code each, as near as can be, the farthest off is sea green: clearly different.',
};

const READ: ColourListRead = {
  list: COLOUR_LIST, more: 0, needsWhite: false, words: '6 colours read, 1 line left out.',
  notes: ['Read by its header, parted by commas: code from code; name from name; hex from hex.'],
  problems: [{ line: 5, column: 'hex', what: '“#c4332” has 5 digits, not six.', do: 'Write # and six digits from 0 to 9 and a to f, such as #1a6b8f.', kept: false }],
};

const idle = () => undefined;

export const MAKER: MakerListProps = {
  list: COLOUR_LIST, codes: CODES, news: { fileName: 'skerry.csv', read: READ }, open: true,
  onOpen: idle, onFile: idle, onExample: idle, onWhite: idle, onTake: idle, onOff: idle, onAway: idle,
};
