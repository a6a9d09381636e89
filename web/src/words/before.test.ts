import { describe, expect, it } from 'vitest';
import { CANVAS, WISH } from '../../dev/canned/sizes';
import { beforeText, plannedNote } from './before';

describe('the numbers that are taken along', () => {
  it('name the pin, the canvas and every limit, each with its unit', () => {
    const lines = beforeText(CANVAS, WISH).split('\n');
    expect(lines).toHaveLength(3 + CANVAS.needs.length);
    expect(lines[0]).toBe('Pin: 32 mm, struck, soft enamel');
    expect(lines[1]).toContain('1800 × 1800 px');
    expect(lines[3]).toBe('No brush under: 8 px (0.2 mm)');
    for (const l of lines) expect(l).toMatch(/px|mm/);
  });

  it('say how a drawing starts', () => {
    expect(plannedNote({ mm: 31.75, making: 'cast', fill: 'none' })).toBe('It starts as you planned it: 31.8 mm, cast, no fill.');
  });
});
