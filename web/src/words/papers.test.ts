import { describe, expect, it } from 'vitest';
import type { Check, Project, Quote } from '../engine/wire.gen';
import { CHECK } from '../../dev/canned/answers';
import { BLANK } from '../../dev/canned/project';
import { CARD } from '../../dev/canned/papers';
import { holesWords, inTheWay, papersSays } from './papers';

const calm: Check = { ...CHECK, findings: [], stampProblem: '' };
delete (calm as { proposal?: unknown }).proposal;
const project: Project = BLANK;

describe('the papers in a sentence', () => {
  it('say what is ready', () => {
    const st = { check: calm, project, quote: undefined };
    expect(inTheWay(st)).toEqual([]);
    expect(papersSays(st, 'Buoy')).toBe('All you send of Buoy is ready: spec sheet, layers, message, lists, card and pictures.');
  });

  it('say what stands in the way, the first of it at once', () => {
    const [finding] = CHECK.findings;
    const check: Check = { ...calm, findings: finding ? [{ ...finding, verdict: 'fails' }] : [] };
    const quote = { needs: [{ cell: 'a', what: 'b', says: 'c' }] } as unknown as Quote;
    const st = { check, project, quote };
    expect(inTheWay(st)).toHaveLength(2);
    expect(papersSays(st, 'Buoy')).toBe('Ready to send, but 1 trouble spot is still open; the papers tell the maker of it. 1 more thing below.');
  });

  it('tell where the holes are, numbered as from behind', () => {
    expect(holesWords(CARD.laid)).toBe('2 holes of 1.5 mm, seen from the front: No 2 at 20 mm from the left and 32 mm from the top; No 1 at 35 mm from the left and 32 mm from the top. Posts are numbered as from behind.');
    expect(holesWords({ ...CARD.laid, holes: [] })).toMatch(/no hole is needed/);
  });
});
