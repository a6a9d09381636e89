import { describe, expect, it } from 'vitest';
import type { Join, Project } from '../engine/wire.gen';
import { BLANK } from '../../dev/canned/project';
import { lookOf } from './look';
import { eyeAt, withJoins } from './parts';
import { designOf, withDesign } from './project';

const JOINS: Join[] = [
  { upper: { at: [0.5, 0.4] }, lower: { at: [0.5, 0.6] }, links: 2 },
  { upper: { at: [0.2, 0.4], drawn: true }, lower: { at: [0.2, 0.6], drawn: true }, links: 0 },
];
const hung: Project = withDesign(BLANK, { parts: { choice: 'dangle', joins: JOINS } });

describe('parts that hang', () => {
  it('one eye moves, and nothing else', () => {
    const moved = eyeAt(JOINS, { join: 0, end: 'lower' }, [0.55, 0.62]);
    expect(moved[0]).toEqual({ ...JOINS[0], lower: { at: [0.55, 0.62] } });
    expect(moved[1]).toBe(JOINS[1]);
    expect(JOINS[0]?.lower.at).toEqual([0.5, 0.6]);
  });

  it('a change of a chain keeps the choice, and a pin of one piece has none', () => {
    const p = withJoins(hung, (all) => all.map((j) => ({ ...j, links: 3 })));
    expect(designOf(p)?.parts).toEqual({ choice: 'dangle', joins: JOINS.map((j) => ({ ...j, links: 3 })) });
    expect(withJoins(BLANK, () => JOINS)).toBe(BLANK);
  });

  it('are part of what a picture shows', () => {
    expect(lookOf(hung)).not.toBe(lookOf(withJoins(hung, () => [])));
  });
});
