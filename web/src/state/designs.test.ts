import { describe, expect, it } from 'vitest';
import { BLANK, DESIGN } from '../../dev/canned/project';
import { placesIn, withDesignCopied, withOpenedMore, withoutDesign, withoutVersion, withVersionMore } from './designs';
import { designOf, pickedOf, versionOf, withVersion } from './project';

const opened = { design: { ...DESIGN, name: 'Buoy', colours: 2 } } as Parameters<typeof withOpenedMore>[1];

describe('versions', () => {
  it('come as copies with an identity and a name of their own, and lie on the sheet', () => {
    const p = withVersionMore(withVersionMore(BLANK, 'Night'), 'Night');
    expect(designOf(p)?.versions.map((v) => [v.id, v.name])).toEqual([['version-1', 'First'], ['version-2', 'Night'], ['version-3', 'Night 2']]);
    expect(pickedOf(p)).toEqual({ design: 0, version: 2 });
    expect(versionOf(p)?.colours).toEqual(versionOf(BLANK)?.colours);
  });

  it('go, but for the last; an identity that is free again may be taken', () => {
    const p = withoutVersion(withVersionMore(BLANK, 'Night'));
    expect(designOf(p)?.versions).toEqual(DESIGN.versions);
    expect(withoutVersion(p)).toBe(p);
  });
});

describe('designs', () => {
  it('come ordered in the number and plating of what lies on the sheet', () => {
    const p = withOpenedMore(withVersion(BLANK, { quantity: 70, plating: 'silver' }), opened, undefined);
    expect(designOf(p)).toMatchObject({ id: 'design-2', name: 'Buoy', colours: 2 });
    expect(versionOf(p)).toMatchObject({ quantity: 70, plating: 'silver' });
    expect(placesIn(p)).toEqual([{ design: 0, version: 0 }, { design: 1, version: 0 }]);
  });

  it('are copied with a die of their own, and taken out but for the last', () => {
    const p = withDesignCopied(BLANK);
    expect(p.order.designs.map((d) => [d.id, d.name])).toEqual([['design-1', 'Skerry Light'], ['design-2', 'Skerry Light 2']]);
    const out = withoutDesign(p);
    expect([out.order.designs.length, pickedOf(out).design]).toEqual([1, 0]);
    expect(withoutDesign(out)).toBe(out);
  });
});
