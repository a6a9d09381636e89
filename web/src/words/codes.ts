// Sentences about a maker's codes.
import type { CodeMatch, FlatCodes, LineProblem, Nearness } from '../engine/wire.gen';

/** "close, a little darker" */
export function nearWords(m: CodeMatch): string {
  return m.lean ? `${m.distance}, ${m.lean}` : m.distance;
}

/** What a colour taken from a list is beside the one that was drawn. */
const PAINTED: Record<Nearness, string> = {
  same: 'the same as drawn',
  'hard to tell': 'hard to tell from the drawn one',
  close: 'close to the drawn one',
  'clearly different': 'clearly different from the drawn one',
  'another colour': 'another than was drawn',
};

/** How a flat stands with the code it has, or could have. */
export function standing(row: FlatCodes): string {
  const { taken } = row;
  if (!taken) return row.nearest[0] ? nearWords(row.nearest[0]) : 'the list is empty';
  if (!taken.match) return 'this list has no such code';
  return taken.recoloured ? `in its colour, ${PAINTED[taken.match.distance]}` : nearWords(taken.match);
}

/** "line 7, hex" */
export function placeWords(p: LineProblem): string {
  return p.column ? `line ${p.line}, ${p.column}` : `line ${p.line}`;
}
