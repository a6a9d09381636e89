import { NARROWEST_ERASER, type LineDraft, type LineKind } from '../state/line';
import type { Outcome } from '../state/typed';
import { Choice } from '../widgets/basic';
import { WidthField } from '../widgets/WidthField';
import { draftWords, LINE_WORDS } from '../words/hands';

interface Props {
  draft: LineDraft;
  onKind: (kind: LineKind) => void;
  onWidth: (mm: number) => void;
  /** Told what becomes of a typed width, and nothing once the field is done with. */
  onReading: (r: Promise<Outcome> | undefined) => void;
  onUndo: () => void;
  onDone: () => void;
  onCancel: () => void;
}

/** What can be chosen and done while a line is drawn, or a capital marked. */
export function LineBar({ draft, ...p }: Props) {
  const { kind } = draft;
  return (
    <div class="line-bar">
      {kind === 'capital' ? <p class="how">{draftWords(kind).how}</p> : <LineFields {...p} draft={draft} kind={kind} />}
      <div class="two">
        {kind === 'capital' ? null : <button type="button" class="solid" disabled={draft.points.length < 2} onClick={p.onDone}>Done</button>}
        <button type="button" class="plain" disabled={draft.points.length === 0} onClick={p.onUndo}>Undo last point</button>
        <button type="button" class="plain" onClick={p.onCancel}>Cancel</button>
      </div>
    </div>
  );
}

function LineFields({ draft, kind, ...p }: Pick<Props, 'draft' | 'onKind' | 'onWidth' | 'onReading'> & { kind: LineKind }) {
  const erasing = kind === 'erase-line';
  return (
    <>
      <Choice
        legend={LINE_WORDS[kind].how} value={kind} onPick={p.onKind}
        options={[{ value: 'draw-line', label: LINE_WORDS['draw-line'].short }, { value: 'erase-line', label: LINE_WORDS['erase-line'].short }]}
      />
      <WidthField
        label={erasing ? 'width' : 'width, or “thinnest”'} width={draft.width} least={erasing ? NARROWEST_ERASER : 0}
        onWidth={p.onWidth} onReading={p.onReading}
      />
    </>
  );
}
