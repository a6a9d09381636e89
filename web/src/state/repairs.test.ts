import { describe, expect, it } from 'vitest';
import { CHECK } from '../../dev/canned/answers';
import { HAND_LINES } from '../../dev/canned/hands';
import { BLANK, DESIGN } from '../../dev/canned/project';
import { MENDED, REPAIRS } from '../../dev/canned/repairs';
import type { Finding } from '../engine/wire.gen';
import { outcomeSays, repairedWords, repairName } from '../words/repairs';
import { designOf } from './project';
import { failing, isRepair, mayMend, middleOf, repairsOf, withRepairs } from './repairs';

describe('repairs of a project', () => {
  it('are added after what is there, in their order', () => {
    const p = withRepairs(BLANK, REPAIRS);
    expect(designOf(p)?.recipes.slice(DESIGN.recipes.length)).toEqual(REPAIRS);
  });

  it('built all over go before what has a place', () => {
    const p = withRepairs(withRepairs(BLANK, REPAIRS), [{ kind: 'build-lines', width: 0 }]);
    const kinds = designOf(p)?.recipes.map((r) => r.kind) ?? [];
    expect(kinds.indexOf('build-lines')).toBeLessThan(kinds.indexOf('thicken-line'));
    expect(kinds.filter((k) => k === 'build-lines')).toHaveLength(1);
  });

  it('are told from what was built or drawn by hand', () => {
    expect(REPAIRS.every(isRepair)).toBe(true);
    expect([...HAND_LINES, { kind: 'outer-edge' as const, width: 0 }].some(isRepair)).toBe(false);
  });

  it('are listed by kind; those of a kind close together are one', () => {
    const all = repairsOf([...HAND_LINES, ...REPAIRS]);
    expect(all.map(repairName)).toEqual(['Line thickened 1', 'Area widened 1', 'Small part let go 1']);
    expect(all.map((n) => n.recipes.length)).toEqual([1, 2, 1]);
    expect(all.map((n) => n.index)).toEqual([2, 3, 5]);
    expect(middleOf(REPAIRS[3] ?? REPAIRS[0]!)).toEqual([0.4, 0.8]);
  });

  it('are looked for at places that fail, and not at notes', () => {
    const f = (kind: Finding['kind'], verdict: Finding['verdict']): Finding => ({ ...CHECK.findings[0]!, kind, verdict });
    const all = [f('thin-line', 'fails'), f('thin-line', 'cannot-tell'), f('rounded-corners', 'holds'), f('sharp-tip', 'fails'), f('gap', 'fails')];
    expect(all.map(mayMend)).toEqual([true, true, false, true, true]);
    expect(failing(all)).toBe(3);
  });
});

describe('words of repairs', () => {
  it('say what came of them and what it changes', () => {
    expect(outcomeSays(MENDED)).toBe('4 places failed. Repaired, 1 still does. It changes 1.26 mm², 0.29 % of the pin.');
    expect(outcomeSays({ ...MENDED, before: 1, left: [] })).toBe('1 place failed. Repaired, none does. It changes 1.26 mm², 0.29 % of the pin.');
    expect(outcomeSays({ ...MENDED, recipes: [] })).toBe('No gentle repair was found. This place needs you.');
    expect(outcomeSays({ ...MENDED, before: 0, recipes: [], left: [] })).toBe('Nothing fails: there is nothing to repair.');
  });

  it('count places, not recipes', () => {
    expect(repairedWords(REPAIRS)).toBe('Repaired 3 places');
    expect(repairedWords(REPAIRS.slice(1, 3))).toBe('Repaired one place');
    expect(repairedWords([{ kind: 'outer-edge', width: 0 }])).toBe('Repaired one place');
  });
});
