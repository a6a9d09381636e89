import { describe, expect, it } from 'vitest';
import { FLATS } from '../../dev/canned/answers';
import { EVERY_KIND } from '../../dev/canned/findings';
import { factsWords, kindWords, manyWords, meaningWords, mendsBySize, measuredWords } from './findings';

const flat = (id: number) => FLATS.find((f) => f.id === id);

describe('trouble spots', () => {
  it('of every kind are named, measured and explained', () => {
    const seen = new Set<string>();
    for (const f of EVERY_KIND) {
      const sides = { flat: flat(f.flat), other: flat(f.other) };
      const all = [kindWords(f), measuredWords(f), meaningWords(f, sides), factsWords(f)];
      for (const words of all) expect(words).not.toMatch(/undefined|NaN|^$/);
      expect(all[1]).toMatch(/\d mm|\d places/);
      expect(seen.has(`${all[0]}: ${all[1]}`)).toBe(false);
      seen.add(`${all[0]}: ${all[1]}`);
    }
  });

  it('speak of the two sides of a gap', () => {
    const [line, edge] = EVERY_KIND;
    expect(line && meaningWords(line, { flat: flat(0), other: flat(3) })).toContain('night blue and signal red');
    expect(edge && kindWords(edge)).toBe('Gap in the outer edge');
    expect(edge && meaningWords(edge, { flat: flat(0), other: undefined })).toContain('night blue would run out');
  });

  it('too many to read are summed up by what most of them are', () => {
    const [line, edge] = EVERY_KIND;
    if (!line || !edge) throw new Error('no findings');
    expect(manyWords([line, edge, line])).toMatch(/^3 places, 2 of them “line too thin”|^3 places, 2 of them “gap in a line”/);
  });

  it('are mended by growing only where metal is not missing', () => {
    const grows = EVERY_KIND.filter(mendsBySize).map((f) => f.kind);
    expect(grows).toContain('thin-line');
    for (const kind of ['gap', 'no-line', 'no-edge', 'fades-out', 'solid-metal']) expect(grows).not.toContain(kind);
  });
});
