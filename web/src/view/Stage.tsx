// The pin in the middle of the sheet, with everything that stands round it.
import { useEffect } from 'preact/hooks';
import type { Check, Gap, HeldParts, Hung, LetterMark, Plating, Recipe } from '../engine/wire.gen';
import type { Drawn, Spot } from '../state/store';
import { BackFace } from './BackFace';
import { CalloutLabels, layCallouts, Leaders } from './Callouts';
import { Canvas } from '../widgets/Canvas';
import { Dimensions, type Side } from './Dimensions';
import { Eyes } from './Eyes';
import { EyeMarks, type EyeMarked } from './EyeMarks';
import { Flags, SpotLines } from './Flags';
import { MARGIN, NARROW, type Layout } from './layout';
import { LetterSpan } from './LetterSpan';
import { Crosshair, GapMark, GapWords, HandLine, ProposedLines, pxWide } from './Marks';
import type { Box, Mapping, Point } from './place';
import { stepsOf } from './useMark';
import { usePinTouch } from './usePinTouch';
import type { Room } from './useRoom';

const DIM_OFF = 30;

export interface StageProps {
  room: Room;
  check: Check | undefined;
  front: Drawn | undefined;
  back: Drawn | undefined;
  /** How it hangs while a post is moved. */
  hung: Hung | undefined;
  brought: Drawn | undefined;
  /** What is marked, laid over the pin. */
  marked: Drawn | undefined;
  turned: boolean;
  holding: boolean;
  /** Asked-for size over the shown one. */
  factor: number;
  layout: Layout;
  /** A line is being drawn by hand: nothing else is in its way. */
  lining: boolean;
  /** Where a line does not close, at the spot that was touched. */
  gap: Gap | undefined;
  /** A line made by hand that is pointed at elsewhere, and how thin one can be, mm. */
  pointed: Recipe | undefined;
  thinnest: number;
  /** A marked capital that is pointed at elsewhere. */
  letter: LetterMark | undefined;
  /** How the parts hang, while an eye moves or as it was checked. */
  parts: HeldParts | undefined;
  spot: Spot | undefined;
  /** What sight marks on the pin. */
  seen: EyeMarked | undefined;
  name: string;
  plating: Plating | undefined;
  /** What the twin takes of the right foot in height, px. */
  twin: number;
  onSide: (devicePx: number) => void;
  onTouch: (x: number, y: number, at: Point) => void;
  onHold: (on: boolean) => void;
  onFlat: (id: number, at: Point) => void;
  onFlag: (index: number, at: Point) => void;
  onDrag: (factor: number) => void;
  onDrop: () => void;
  /** Sizes a pin may have, mm. */
  bounds: { least: number; most: number };
  /** A width or height was typed, mm. */
  onSize: (side: Side, mm: number) => void;
}

/** The box that lays another picture of the same pin exactly over this one. */
function over(front: Drawn, map: Mapping, box: Box, other: Drawn): Box {
  const k = ((box.w / front.shot.picture.w) * front.shot.picture.scale) / other.shot.picture.scale;
  const o = map.toSheet(0, 0);
  const q = other.shot.picture;
  return { x: o.x - q.dx * k, y: o.y - q.dy * k, w: q.w * k, h: q.h * k };
}

const css = (b: Box) => ({ left: `${b.x}px`, top: `${b.y}px`, width: `${b.w}px`, height: `${b.h}px` });

export function Stage(p: StageProps) {
  const { home, box, map } = p.layout;
  useEffect(() => {
    if (p.room.w > 0) p.onSide(Math.max(home.w, home.h) * devicePixelRatio);
  }, [p.room.w, p.room.h]);
  const { mark, ...touch } = usePinTouch(box, stepsOf(p.check, map), p.onHold, (x, y) => {
    const w = map?.toWork(x, y);
    if (w) p.onTouch(w.x, w.y, { x, y });
  });
  return (
    <>
      <div class={p.turned ? 'flipper turned' : 'flipper'}>
        <div class="face front" aria-hidden={p.turned}>
          <div class="pin" style={css(box)}><Canvas shot={p.front?.shot} label={`${p.name}, struck, from the front`} /></div>
          {p.front && map && p.brought ? (
            <div class={p.holding ? 'pin brought seen' : 'pin brought'} style={css(over(p.front, map, box, p.brought))} aria-hidden={!p.holding}>
              <Canvas shot={p.brought.shot} label="The drawing as brought" />
            </div>
          ) : null}
          {p.front && map && p.marked ? (
            <div class="pin lost" style={css(over(p.front, map, box, p.marked))}>
              <Canvas shot={p.marked.shot} label={p.marked.view === 'changed' ? 'Where the drawing changed, outlined and hatched' : 'Where a colour would be lost, hatched'} />
            </div>
          ) : null}
          <button type="button" class="pin-touch" style={css(box)} tabIndex={p.turned || p.lining ? -1 : 0}
            aria-label="The pin. Tap a part to change it, or move the mark there with the arrow keys and press Enter; hold, or hold the space bar, to see the drawing as brought." {...touch} />
        </div>
        <div class="face rear" aria-hidden={!p.turned}>
          {p.back && p.check ? <BackFace back={p.back} check={p.check} now={p.hung ?? p.check} home={home} seen={p.turned} room={p.room} margin={p.room.w >= NARROW ? MARGIN : 0} /> : null}
        </div>
      </div>
      {map && p.check && !p.turned && !p.holding && !p.lining ? <Around {...p} check={p.check} map={map} mark={mark} /> : null}
    </>
  );
}

function Around(p: StageProps & { check: Check; map: Mapping; mark: Point | undefined }) {
  const { check, map, room } = p;
  const a = map.toSheet(check.outline[0] ?? 0, check.outline[1] ?? 0);
  const b = map.toSheet(check.outline[2] ?? 0, check.outline[3] ?? 0);
  const pin = { x: a.x, y: a.y, w: b.x - a.x, h: b.y - a.y };
  const wide = room.w >= NARROW;
  const callouts = wide ? layCallouts(check.flats, map, pin, room.h - 12, room.h - p.twin) : [];
  const picked = p.spot?.kind === 'finding' ? p.spot.index : undefined;
  const gap = p.gap && p.spot ? { gap: p.gap, from: p.spot, room, map, raster: check.flats } : undefined;
  return (
    <>
      <svg class="overlay" width={room.w} height={room.h} aria-hidden="true">
        <Leaders callouts={callouts} width={room.w} margin={MARGIN} />
        <SpotLines findings={check.findings} map={map} picked={picked} />
        {check.proposal ? <ProposedLines lines={check.proposal.lines} map={map} /> : null}
        {p.seen ? <EyeMarks {...p.seen} map={map} /> : null}
        {p.pointed ? <HandLine line={p.pointed} map={map} raster={check.flats} width={pxWide(p.pointed, p.thinnest, check, map)} /> : null}
        {p.letter ? <LetterSpan mark={p.letter} map={map} raster={check.flats} /> : null}
        {gap ? <GapMark {...gap} /> : null}
        {p.mark ? <Crosshair at={p.mark} /> : null}
      </svg>
      <CalloutLabels callouts={callouts} width={room.w} margin={MARGIN} plating={p.plating} onFlat={p.onFlat} />
      <Dimensions
        pin={pin} w={check.shown.w} h={check.shown.h} factor={p.factor} bounds={p.bounds} off={DIM_OFF}
        onDrag={p.onDrag} onDrop={p.onDrop} onSize={p.onSize}
      />
      <Flags findings={check.findings} map={map} picked={picked} onFlag={p.onFlag} />
      {p.parts && p.parts.joins.length > 0 ? <Eyes parts={p.parts} live={p.parts !== check.parts} check={check} map={map} home={p.layout.box} /> : null}
      {gap ? <GapWords {...gap} /> : null}
    </>
  );
}
