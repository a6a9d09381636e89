import { describe, expect, it } from 'vitest';
import { BLANK } from '../../dev/canned/project';
import type { Opened } from '../engine/wire.gen';
import { freshProof, proofsAt, withProof } from './proofs';
import { designOf, hexOf, pickedOf, rgbOf, versionOf, withDesign, withEdit, withOpened, withVersion } from './project';

describe('project', () => {
  it('is replaced whole; the old value stays', () => {
    const before = JSON.stringify(BLANK);
    const next = withVersion(withDesign(BLANK, { colours: 7 }), { quantity: 250 });
    expect(designOf(next)?.colours).toBe(7);
    expect(versionOf(next)?.quantity).toBe(250);
    expect(JSON.stringify(BLANK)).toBe(before);
  });

  it('keeps one edit of a colour that is being dragged about', () => {
    let p = withEdit(BLANK, { op: 'recolour', flat: 1, rgb: { r: 1, g: 2, b: 3 } });
    p = withEdit(p, { op: 'recolour', flat: 1, rgb: { r: 4, g: 5, b: 6 } });
    p = withEdit(p, { op: 'join', flat: 1, with: 2 });
    p = withEdit(p, { op: 'join', flat: 1, with: 3 });
    expect(designOf(p)?.edits.map((e) => e.op)).toEqual(['recolour', 'join', 'join']);
    expect(designOf(p)?.edits[0]?.rgb).toEqual({ r: 4, g: 5, b: 6 });
  });

  it('keeps both of two edits that do not say the same', () => {
    let p = withEdit(BLANK, { op: 'apart', flat: 1, with: 2 });
    p = withEdit(p, { op: 'apart', flat: 1, with: 3 });
    p = withEdit(p, { op: 'role', flat: 1, role: 'metal', count: 3 });
    p = withEdit(p, { op: 'role', flat: 1, role: 'enamel', count: 5 });
    expect(designOf(p)?.edits).toHaveLength(4);
  });

  it('lets a proof go with the drawing it was made from', () => {
    const at = pickedOf(BLANK);
    const p = withProof(BLANK, freshProof(BLANK, at, 'r1', 'proof.jpg', '2026-03-02', false));
    const opened = (drawing: string): Opened => ({ drawing, design: designOf(BLANK) } as Opened);
    const same = designOf(BLANK)?.drawings[0]?.id ?? '';
    expect(same).not.toBe('');
    expect(proofsAt(withOpened(p, opened(same), undefined, true), at)).toHaveLength(1);
    expect(proofsAt(withOpened(p, opened('another'), undefined, true), at)).toHaveLength(0);
  });
});

describe('colours as text', () => {
  it('goes there and back', () => {
    expect(hexOf({ r: 0, g: 128, b: 255 })).toBe('#0080ff');
    expect(rgbOf('#0080ff')).toEqual({ r: 0, g: 128, b: 255 });
    expect(rgbOf('f80')).toEqual({ r: 255, g: 136, b: 0 });
    expect(rgbOf('blue')).toBeUndefined();
  });
});
