// Drawing or erasing a stretch of line, or marking a capital: taps set its points;
// arrow keys move a mark, and Enter sets a point there.
import { useRef } from 'preact/hooks';
import type { Check } from '../engine/wire.gen';
import { lastWanted, turnedTo, withoutLast, withPoint, type LineDraft } from '../state/line';
import type { Outcome } from '../state/typed';
import { draftWords, markSays } from '../words/hands';
import { plural } from '../words/words';
import type { Layout } from './layout';
import { LineBar } from './LineBar';
import { Crosshair, HandLine, onSheet, pxWide } from './Marks';
import type { Mapping, Point } from './place';
import { useLineKeys } from './useLineKeys';
import { stepsOf, useMark } from './useMark';
import type { Room } from './useRoom';

export interface LineModeProps {
  draft: LineDraft;
  check: Check;
  room: Room;
  layout: Layout & { map: Mapping };
  /** How thin a line can be, mm. */
  thinnest: number;
  /** Changes the line as it is by then. */
  onDraft: (change: (d: LineDraft) => LineDraft) => void;
  onDone: () => void;
  onCancel: () => void;
}

/** A tap this near the last point ends the line, px: by key, mouse, finger. */
const SAME = { key: 1, mouse: 5, finger: 14 } as const;

/** A capital may be hardly higher than that on the sheet: only its own foot is no head, px. */
const SAME_FOOT = 3;

export function LineMode(p: LineModeProps) {
  const { draft, check, layout: { map }, room } = p;
  const on = { map, raster: check.flats };
  const points = draft.points.map((s) => onSheet(s, on));
  const { mark, setMark, onKey } = useMark({ x: 0, y: 0, w: room.w, h: room.h }, stepsOf(check, map), points[0]);
  const reading = useRef<Promise<Outcome>>(undefined);
  const done = async () => {
    // A width that is still being read counts; one that cannot be read is mended first.
    if (typeof (await reading.current) !== 'string') p.onDone();
  };
  const tap = (at: Point, near: number) => {
    const end = points.at(-1);
    if (end && Math.hypot(at.x - end.x, at.y - end.y) <= (draft.kind === 'capital' ? Math.min(near, SAME_FOOT) : near)) {
      if (points.length > 1) void done();
      return;
    }
    const w = map.toWork(at.x, at.y);
    p.onDraft((d) => withPoint(d, [w.x / check.flats.w, w.y / check.flats.h]));
    if (lastWanted(draft)) p.onDone();
  };
  const undo = () => p.onDraft(withoutLast);
  const layer = useLineKeys({ onUndo: undo, onCancel: p.onCancel });
  return (
    <div class="line-mode" role="group" aria-label={draftWords(draft.kind).act}>
      <svg class="overlay" width={room.w} height={room.h} aria-hidden="true">
        {draft.kind === 'capital' ? null : <HandLine {...on} line={{ kind: draft.kind, points: draft.points }} width={pxWide(draft, p.thinnest, check, map)} />}
        {mark ? <Band from={points.at(-1)} to={mark} /> : null}
        {points.map((at, i) => <circle key={i} class={i + 1 < points.length ? 'line-point' : 'line-point last'} cx={at.x} cy={at.y} r={i + 1 < points.length ? 3.5 : 6} />)}
        {mark ? <Crosshair at={mark} /> : null}
      </svg>
      <div
        ref={layer} class="line-touch" tabIndex={0} role="application" aria-label={LAYER_SAYS[draft.kind === 'capital' ? 'capital' : 'line']}
        onKeyDown={(e) => {
          if (onKey(e) || e.key !== 'Enter' || !mark || e.repeat) return;
          e.preventDefault();
          tap(mark, SAME.key);
        }}
        onPointerDown={(e) => { if (e.button === 0) { e.currentTarget.setPointerCapture(e.pointerId); setMark(placeOf(e)); } }}
        onPointerMove={(e) => setMark(placeOf(e))}
        onPointerUp={(e) => { if (e.button === 0 && e.isPrimary) tap(placeOf(e), e.pointerType === 'mouse' ? SAME.mouse : SAME.finger); }}
        onContextMenu={(e) => e.preventDefault()}
      />
      <LineBar
        draft={draft} onUndo={undo} onDone={() => void done()} onCancel={p.onCancel}
        onKind={(kind) => p.onDraft((d) => turnedTo(d, kind))}
        onWidth={(width) => p.onDraft((d) => ({ ...d, width }))}
        onReading={(r) => (reading.current = r)}
      />
      <p class="unseen" role="status">{mark ? saysWhere(map.toWork(mark.x, mark.y), p) : ''}</p>
    </div>
  );
}

const KEYS = 'The pin. The arrow keys move the mark, with Shift in small steps.';
const LAYER_SAYS = {
  line: `${KEYS} Enter sets a point; Enter at the last point ends the line.`,
  capital: `${KEYS} Enter sets the foot of a capital, and then its head.`,
};

function placeOf(e: PointerEvent): Point {
  const r = e.currentTarget instanceof Element ? e.currentTarget.getBoundingClientRect() : { x: 0, y: 0 };
  return { x: e.clientX - r.x, y: e.clientY - r.y };
}

function saysWhere(work: Point, { draft, check }: LineModeProps): string {
  const [x0, y0] = check.outline;
  return `${markSays((work.x - x0) / check.scale, (work.y - y0) / check.scale)}; ${plural(draft.points.length, 'point')} set`;
}

/** From the last point to where the next would be. */
function Band({ from, to }: { from: Point | undefined; to: Point }) {
  return from ? <path class="band" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} /> : null;
}
