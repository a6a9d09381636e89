// What the parts of the pin on the sheet are, and how they hang.
import { useEffect } from 'preact/hooks';
import { PartsFields } from '../panels/PartsFields';
import { choosing, chooseParts, followEyes, liveParts, withJoins } from '../state/parts';
import * as s from '../state/store';

export function Parts() {
  useEffect(followEyes, []);
  const parts = liveParts() ?? s.shown.value?.check.parts;
  if (!parts) return null;
  return (
    <PartsFields
      parts={{ ...parts, says: s.shown.value?.check.parts?.says ?? parts.says, loose: s.shown.value?.check.parts?.loose ?? parts.loose }}
      busy={choosing.value}
      onChoose={(c) => void chooseParts(c)}
      onJoin={(n, change, what) => s.change((p) => withJoins(p, (all) => all.map((j, i) => (i === n ? { ...j, ...change } : j))), what)}
    />
  );
}
