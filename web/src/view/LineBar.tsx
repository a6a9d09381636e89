import { NARROWEST_ERASER, type LineDraft } from '../state/line';
import type { Outcome } from '../state/typed';
import { Choice } from '../widgets/basic';
import { WidthField } from '../widgets/WidthField';
import { LINE_WORDS } from '../words/hands';

interface Props {
  draft: LineDraft;
  onKind: (kind: LineDraft['kind']) => void;
  onWidth: (mm: number) => void;
  /** Told what becomes of a typed width, and nothing once the field is done with. */
  onReading: (r: Promise<Outcome> | undefined) => void;
  onUndo: () => void;
  onDone: () => void;
  onCancel: () => void;
}

/** What can be chosen and done while a line is drawn. */
export function LineBar({ draft, ...p }: Props) {
  const erasing = draft.kind === 'erase-line';
  return (
    <div class="line-bar">
      <Choice
        legend={LINE_WORDS[draft.kind].how} value={draft.kind} onPick={p.onKind}
        options={[{ value: 'draw-line', label: LINE_WORDS['draw-line'].short }, { value: 'erase-line', label: LINE_WORDS['erase-line'].short }]}
      />
      <WidthField
        label={erasing ? 'width' : 'width, or “thinnest”'} width={draft.width} least={erasing ? NARROWEST_ERASER : 0}
        onWidth={p.onWidth} onReading={p.onReading}
      />
      <div class="two">
        <button type="button" class="solid" disabled={draft.points.length < 2} onClick={p.onDone}>Done</button>
        <button type="button" class="plain" disabled={draft.points.length === 0} onClick={p.onUndo}>Undo last point</button>
        <button type="button" class="plain" onClick={p.onCancel}>Cancel</button>
      </div>
    </div>
  );
}
