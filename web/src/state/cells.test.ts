import { describe, expect, it } from 'vitest';
import { LIST } from '../../dev/canned/project';
import { GROUPS, isRows } from '../words/listcells';
import { faultAt, textAt, valueAt, withCell, withoutRow, withoutSizeClass, withRow, withSizeClass } from './cells';

describe('cells of a price list', () => {
  it('are read and changed by their places, and the list before stays as it was', () => {
    const next = withCell(LIST, 'pieces.breaks[1].unit[2]', '9.99');
    expect(textAt(next, 'pieces.breaks[1].unit[2]')).toBe('9.99');
    expect(textAt(LIST, 'pieces.breaks[1].unit[2]')).toBe('2.25');
    expect(next.pieces.breaks[0]).toBe(LIST.pieces.breaks[0]);
  });

  it('that are gone change nothing', () => {
    expect(withCell(LIST, 'named[3].rate', '1')).toEqual(LIST);
    expect(withCell(LIST, 'nothing.here', '1')).toBe(LIST);
  });

  it('with a first rate are counted by the piece', () => {
    const open = withCell(LIST, 'shape.cutOut', { rate: '', by: '' });
    expect(withCell(open, 'shape.cutOut.rate', '0.05').shape.cutOut).toEqual({ rate: '0.05', by: 'piece' });
    const percent = withCell(LIST, 'shape.cutOut', { rate: '', by: 'percent' });
    expect(withCell(percent, 'shape.cutOut.rate', '5').shape.cutOut.by).toBe('percent');
  });

  it('come and go as rows and as size classes', () => {
    const one = withRow(LIST, 'named', { name: 'Papers', rate: '6', by: 'order' });
    expect(one.named).toHaveLength(1);
    expect(withoutRow(one, 'named', 0).named).toEqual([]);
    const wider = withSizeClass(LIST, 60);
    expect(wider.pieces.breaks.every((b) => b.unit.length === wider.pieces.sizes.length)).toBe(true);
    expect(withoutSizeClass(wider, 4)).toEqual(LIST);
  });

  it('tell what is wrong in them or in what they hold, not in a neighbour', () => {
    const faults = [{ cell: 'shape.cutOut.rate', what: 'Too much.' }, { cell: 'named[10].name', what: 'No name.' }];
    expect(faultAt(faults, 'shape.cutOut')).toBe('Too much.');
    expect(faultAt(faults, 'named[1]')).toBeUndefined();
  });

  it('that the page shows are all in a list', () => {
    for (const part of GROUPS.flatMap((g) => g.parts)) {
      if (isRows(part)) {
        const list = withRow(LIST, part.rows, part.blank);
        const last = (valueAt(list, part.rows) as unknown[]).length - 1;
        for (const c of part.columns) expect(valueAt(list, `${part.rows}[${last}].${c.at}`), `${part.rows} ${c.at}`).toBeDefined();
      } else expect(valueAt(LIST, part.at), part.at).toBeDefined();
    }
  });
});
