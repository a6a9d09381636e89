// What is to be known of the pin on the sheet, at its head.
import { revisedOf } from '../state/project';
import * as s from '../state/store';

/** Always there, so that the rows of the sheet keep their places; empty as a rule. */
export function HeadNotes() {
  return <div class="head-notes"><Changed /></div>;
}

function Changed() {
  const p = s.asked.value;
  const both = p && revisedOf(p, s.at.value);
  if (!both || s.marking.value !== 'changed') return null;
  return (
    <div class="head-note" role="status">
      <p>{both.now.differs}, since version {both.before.revision}: hatched on the pin.</p>
      <button type="button" class="plain" onClick={() => (s.marking.value = undefined)}>Put the marks away</button>
    </div>
  );
}
