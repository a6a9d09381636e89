// The maker's colour list of this order, in its fold under Colours.
import { useEffect } from 'preact/hooks';
import skerry from '../../../testdata/colourlists/skerry.csv?url';
import { bringList, brought, codes, colourList, foldOpen, followCodes } from '../state/codes';
import { withCodes, withColourList, withoutCode } from '../state/colouring';
import * as s from '../state/store';
import { MakerList } from '../widgets/MakerList';
import { plural } from '../words/words';

async function example(): Promise<void> {
  const got = await fetch(skerry);
  if (got.ok) await bringList(await got.blob(), 'skerry.csv');
  else s.tell('The invented list did not come.', 'Load the page again, or choose a list of your own.');
}

export function Maker() {
  useEffect(followCodes, []);
  return (
    <MakerList
      list={colourList.value} codes={codes.value?.codes} news={brought.value} open={foldOpen.value}
      onOpen={(open) => (foldOpen.value = open)}
      onFile={(file, fileName) => void bringList(file, fileName)}
      onExample={() => void example()}
      onWhite={(white) => { const b = brought.value; if (b) void bringList(b.file, b.fileName, white); }}
      onTake={(takes, painted) => s.change((p) => withCodes(p, takes, painted), takes.length === 1 ? `Took ${takes[0]?.entry.code ?? ''}` : `Took ${plural(takes.length, 'code')}`)}
      onOff={(flat) => s.change((p) => withoutCode(p, flat), 'Took a code off')}
      onAway={() => s.change((p) => withColourList(p, undefined), 'Put the colour list away')}
    />
  );
}
