// Repairing all, with the project on the sheet.
import { askAll, makeRepairs, mending, preview, seekSize, sized, sizedBy, stopSeeking } from '../state/mend';
import { withSize } from '../state/project';
import { failing } from '../state/repairs';
import * as s from '../state/store';
import { RepairAll } from '../panels/RepairAll';
import { mm } from '../words/length';
import { repairedWords } from '../words/repairs';

export function Repairs() {
  const p = s.history.value?.now;
  const shown = s.shown.value;
  if (!p || !shown) return null;
  const seen = preview.value?.project === p ? preview.value : undefined;
  const found = sized.value?.cause === sizedBy(p) ? sized.value : undefined;
  return (
    <RepairAll
      places={failing(shown.check.findings)} busy={mending.value} preview={seen} raster={shown.check.flats} sized={found}
      onTry={() => void askAll(p)}
      onMake={() => seen && makeRepairs(seen.answer.recipes, repairedWords(seen.answer.recipes))}
      onLeave={() => (preview.value = undefined)}
      onSeek={() => void seekSize(p)} onStop={stopSeeking}
      onSize={(size) => s.change((q) => withSize(q, size), `Size ${mm(size, 1)}`)}
    />
  );
}
