// What the figures mean, which way is better, and what is asked of ours.

/** The figures of one picture. `tail` is the end of the distribution where it
 * is worst: the 10th percentile of what should be high, the 90th of what should be low. */
export const FIGURES = [
  { key: 'every', words: 'every colour', high: true, average: true, digits: 2 },
  { key: 'found', words: 'found <=2', high: true, digits: 2 },
  { key: 'nearly', words: 'found <=5', high: true, digits: 2 },
  { key: 'right', words: 'right px', high: true, digits: 4 },
  { key: 'edge', words: 'edge px', high: true, digits: 3 },
  { key: 'mixes', words: 'edge mixes', high: false, average: true, digits: 2 },
  { key: 'pieces', words: 'pieces x', high: false, digits: 1 },
  { key: 'inner', words: 'without bites', high: false, digits: 1 },
  { key: 'off', words: 'CIEDE2000', high: false, digits: 2 },
];

/** Floors and aims: clean, JPEG, photographed. The floors are what the true
 * palette with simple edge labelling reached on another set of drawings. */
export const ASKED = [
  { key: 'every', of: 'mid', words: 'share of pictures with every colour found', aim: [0.98, 0.9, 0.9] },
  { key: 'right', of: 'mid', words: 'right pixels, median', floor: [0.9975, 0.992, 0.984], aim: [0.998, 0.993, 0.985] },
  { key: 'right', of: 'tail', words: 'right pixels, 10th percentile', floor: [0.982, 0.971, 0.949], aim: [0.99, 0.98, 0.96] },
  { key: 'edge', of: 'mid', words: 'right within 2 px of a boundary, median', floor: [0.979, 0.928, 0.851], aim: [0.98, 0.93, 0.86] },
  { key: 'off', of: 'mid', words: 'mean CIEDE2000, median', floor: [0.13, 0.38, 1.2], aim: [0.12, 0.4, 1] },
  { key: 'pieces', of: 'mid', words: 'pieces, times the truth, median', floor: [7.5, 9, 28], aim: [3, 5, 8] },
  { key: 'mixes', of: 'mid', words: 'edge-mix swatches, mean', aim: [0, 0, 0] },
];

/** Pictures without a flat truth: at most this times the better of the two peers. */
export const PAINTED_MOST = 1.05;

export const figure = (key) => FIGURES.find((f) => f.key === key);
