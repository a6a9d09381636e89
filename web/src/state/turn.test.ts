// The sheet turns to another version: what is done and undone lies where it was done.
import { beforeEach, describe, expect, it } from 'vitest';
import { BLANK, DESIGN } from '../../dev/canned/project';
import { designOf, pickedOf, versionOf, withDesign, withOpened, withVersion } from './project';
import * as s from './store';

const BUOY = { ...DESIGN, id: 'design-2', name: 'Buoy', versions: DESIGN.versions.flatMap((v) => [v, { ...v, id: 'version-2', quantity: 70 }]) };
const TWO = { ...BLANK, order: { ...BLANK.order, designs: [DESIGN, BUOY] } };
const now = () => s.history.value?.now ?? BLANK;

beforeEach(() => s.start(TWO));

describe('the place on the sheet', () => {
  it('is what is changed, whatever else there is', () => {
    s.turnTo({ design: 1, version: 1 });
    s.change((p) => withVersion(withDesign(p, { colours: 3 }), { quantity: 9 }), 'both');
    expect(now().order.designs.map((d) => d.colours)).toEqual([DESIGN.colours, 3]);
    expect(now().order.designs[1]?.versions.map((v) => v.quantity)).toEqual([DESIGN.versions[0]?.quantity, 9]);
    expect(s.picked(now())).toMatchObject({ design: 1, version: 1 });
  });

  it('gives way to the last there is when it is gone', () => {
    expect(pickedOf({ ...TWO, at: { design: 5, version: 5 } })).toEqual({ design: 1, version: 1 });
    expect(pickedOf({ ...TWO, at: { design: 0, version: 1 } })).toEqual({ design: 0, version: 0 });
  });

  it('goes back to where a step was made, and forward there again', () => {
    s.change((p) => withDesign(p, { colours: 3 }), 'three');
    s.turnTo({ design: 1, version: 0 });
    s.goBack();
    expect([s.at.value.design, designOf(now())?.colours]).toEqual([0, DESIGN.colours]);
    s.turnTo({ design: 1, version: 0 });
    s.goForward();
    expect([s.at.value.design, designOf(now())?.colours]).toEqual([0, 3]);
  });

  it('is where a thing lands that was begun there, though another lies on the sheet by then', () => {
    s.turnTo({ design: 1, version: 0 });
    const here = s.here();
    s.turnTo({ design: 1, version: 1 });
    here(() => s.change((p) => withVersion(p, { quantity: 5 }), 'five'));
    expect(s.at.value).toEqual({ design: 1, version: 1 });
    expect(designOf(now())?.versions.map((v) => v.quantity)).toEqual([5, 70]);
    const gone = s.here();
    s.change((p) => ({ ...p, order: { ...p.order, designs: [DESIGN] } }), 'away');
    gone(() => s.change((p) => withVersion(p, { quantity: 1 }), 'one'));
    expect(versionOf(now())?.quantity).toBe(DESIGN.versions[0]?.quantity);
  });

  it('keeps its versions under another drawing', () => {
    const opened = { design: { ...DESIGN, id: 'design-1', colours: 2 } } as Parameters<typeof withOpened>[1];
    const p = withOpened({ ...TWO, at: { design: 1, version: 1 } }, opened, 'Gull', true);
    expect(designOf(p)).toMatchObject({ id: 'design-2', name: 'Gull', colours: 2 });
    expect(versionOf(p)).toMatchObject({ id: 'version-2', quantity: 70, colours: [] });
  });
});
