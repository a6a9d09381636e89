// What is to be known of the pin on the sheet, at its head.
import type { Recipe } from '../engine/wire.gen';
import { withBuilt, withKept, withoutProposed } from '../state/hands';
import { designOf, revisedOf, withDesign } from '../state/project';
import * as s from '../state/store';
import { WidthField } from '../widgets/WidthField';

/** Always there, so that the rows of the sheet keep their places; empty as a rule. */
export function HeadNotes() {
  return <div class="head-notes"><Proposed /><Changed /></div>;
}

const recipes = (change: (all: readonly Recipe[]) => Recipe[], what: string) =>
  s.change((p) => {
    const d = designOf(p);
    return d ? withDesign(p, { recipes: change(d.recipes) }) : p;
  }, what);

/** Lines that were not in the drawing wait for a yes. */
function Proposed() {
  const waiting = s.design.value?.recipes.filter((r) => r.proposed) ?? [];
  const words = s.shown.value?.check.proposal?.words;
  if (waiting.length === 0 || !words) return null;
  const lines = waiting.find((r) => r.kind === 'build-lines');
  return (
    <div class="head-note proposal">
      <p>{words}</p>
      <div class="two">
        <button type="button" class="solid" onClick={() => recipes(withKept, 'Kept the proposed lines')}>Keep these lines</button>
        <button type="button" class="plain" onClick={() => recipes(withoutProposed, 'Left the proposed lines out')}>Without them</button>
        {lines ? <WidthField label="line width" width={lines.width} least={0} onWidth={(w) => recipes((all) => withBuilt(all, lines.kind, w), 'Changed the built metal')} /> : null}
      </div>
    </div>
  );
}

function Changed() {
  const p = s.asked.value;
  const both = p && revisedOf(p);
  if (!both || s.marking.value !== 'changed') return null;
  return (
    <div class="head-note" role="status">
      <p>{both.now.differs}, since version {both.before.revision}: hatched on the pin.</p>
      <button type="button" class="plain" onClick={() => (s.marking.value = undefined)}>Put the marks away</button>
    </div>
  );
}
