// The maker's own sheet, with the pin laid on it: the outline, what else may be
// the pin, three handles to set it by hand, a box to look in, a measure.
import { useRef, useState } from 'preact/hooks';
import type { MarkedMeasure, ProofHow, ProofLaid, Point } from '../engine/wire.gen';
import { Canvas } from '../widgets/Canvas';
import { LengthField } from '../widgets/LengthField';

export interface SheetProps {
  pixels: ImageData;
  laid: ProofLaid;
  measure: MarkedMeasure;
  /** Pixels in a millimetre of the paper, for a page of a PDF. */
  perMM: number | undefined;
  /** It is a photograph of a finished pin, which may lie in perspective. */
  photo: boolean;
  white: Point | undefined;
  onHow: (how: ProofHow, what: string) => void;
  onWhite: (at: Point) => void;
  onMeasure: (m: MarkedMeasure, what: string) => void;
}

type Tool = 'points' | 'box' | 'measure' | 'white';
type Box = [number, number, number, number];

/** The arrow keys move a handle so far, px of the picture; with Shift a tenth. */
const STEP = 5;

const NO_MEASURE: MarkedMeasure = { from: { x: 0, y: 0 }, to: { x: 0, y: 0 }, mm: 0 };

export function ProofSheet(p: SheetProps) {
  const [tool, setTool] = useState<Tool>('points');
  const [moved, setMoved] = useState<{ of: ProofLaid; at: readonly Point[] }>();
  const [box, setBox] = useState<Box>();
  const [span, setSpan] = useState<readonly Point[]>([]);
  const frame = useRef<HTMLDivElement>(null);
  const { w, h } = p.laid;
  const handles = moved?.of === p.laid ? moved.at : p.laid.pictureCorners;
  const at = (e: MouseEvent): Point => {
    const r = frame.current?.getBoundingClientRect();
    return r ? { x: ((e.clientX - r.left) / r.width) * w, y: ((e.clientY - r.top) / r.height) * h } : { x: 0, y: 0 };
  };
  const move = (i: number, to: Point) => setMoved({ of: p.laid, at: handles.map((q, k) => (k === i ? { x: within(to.x, w), y: within(to.y, h) } : q)) });
  const set = () => {
    if (moved?.of === p.laid) p.onHow({ pin: p.laid.corners, picture: [...moved.at], ...(p.photo ? { exact: true } : {}), refine: true }, 'Laid the pin on the proof by hand');
  };
  const slant = p.photo ? { slant: true } : {};
  const tap = { onClick: (e: MouseEvent) => { if (tool === 'white') p.onWhite(at(e)); } };
  const draw = useStroke(at, {
    onMove: (from, to) => {
      if (tool === 'box') setBox([Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y)]);
      if (tool === 'measure') setSpan([from, to]);
    },
    onEnd: () => {
      if (tool === 'box' && box) p.onHow({ box, ...slant }, 'Looked in a box of the proof');
    },
  });
  const [from, to] = span.length === 2 ? span : p.measure.mm > 0 ? [p.measure.from, p.measure.to] : [];
  const unit = Math.max(w, h) / 400;
  return (
    <div class="proof-sheet">
      <fieldset class="choice">
        <legend>On this sheet</legend>
        <div class="choice-row">
          {(p.photo ? PHOTO_TOOLS : PROOF_TOOLS).map((t) => (
            <label key={t}><input type="radio" name="proof-tool" checked={tool === t} onChange={() => { setTool(t); setBox(undefined); }} /><span>{TOOL[t]}</span></label>
          ))}
        </div>
        <p class="hint">{HINT[tool]}</p>
      </fieldset>
      <div ref={frame} class={`proof-frame ${tool}`} style={{ aspectRatio: `${w} / ${h}` }} {...(tool === 'points' ? {} : tool === 'white' ? tap : draw)}>
        <Canvas shot={p} label="The maker’s proof as it came" />
        <svg viewBox={`0 0 ${w} ${h}`} aria-hidden="true" style={{ '--px': unit }}>
          <path class="halo" d={loops(p.laid.outline)} />
          <path class="laid" d={loops(p.laid.outline)} />
          {p.laid.spots.map((c, i) => (i + 1 === p.laid.chosen ? null : <path key={i} class="spot" d={boxPath(c.box)} />))}
          {box ? <path class="box" d={boxPath(box)} /> : null}
          {p.white ? <circle class="white" cx={p.white.x} cy={p.white.y} r={3 * unit} /> : null}
          {from && to ? <path class="span" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} /> : null}
        </svg>
        {tool === 'points' ? handles.map((q, i) => (
          <Handle key={i} n={i + 1} at={q} w={w} h={h} place={at} onMove={(to2) => move(i, to2)} />
        )) : null}
        {tool === 'points' ? p.laid.spots.map((c, i) => (i + 1 === p.laid.chosen ? null : (
          <button key={i} type="button" class="spot-no" style={{ left: `${(c.box[0] / w) * 100}%`, top: `${(c.box[1] / h) * 100}%` }} onClick={() => p.onHow({ choose: i + 1, ...slant }, 'Took another place of the proof')}>this is the pin</button>
        ))) : null}
      </div>
      {tool === 'points' && moved?.of === p.laid ? <p class="row-acts"><button type="button" class="solid" onClick={set}>Lay it by these points</button> <button type="button" class="plain" onClick={() => setMoved(undefined)}>Leave it</button></p> : null}
      {tool === 'points' && p.laid.chosen === 0 ? <p><button type="button" class="link" onClick={() => p.onHow(slant, 'Found the pin again')}>Let it be found again</button></p> : null}
      {tool === 'measure' && from && to ? (
        <LengthField label="This is" mm={p.measure.mm} least={0.5} most={1000} onLength={(mm, words) => { setSpan([]); p.onMeasure({ from, to, mm }, `Marked ${words} on the proof`); }} />
      ) : null}
      {tool === 'measure' && p.perMM ? <p><button type="button" class="link" onClick={() => p.onMeasure(paper(w, p.perMM ?? 1), 'Took the scale of the paper')}>The page is drawn at true size</button></p> : null}
      {tool === 'measure' && p.measure.mm > 0 ? <p><button type="button" class="link" onClick={() => { setSpan([]); p.onMeasure(NO_MEASURE, 'No measure'); }}>Without a measure</button></p> : null}
    </div>
  );
}

const PROOF_TOOLS: readonly Tool[] = ['points', 'box', 'measure'];
const PHOTO_TOOLS: readonly Tool[] = ['points', 'box', 'white'];

const TOOL: Record<Tool, string> = { points: 'where the pin lies', box: 'look in a box', measure: 'a measure', white: 'white paper' };

const HINT: Record<Tool, string> = {
  points: 'The thin line is your outline. Where it lies wrong, drag its points to their places in the picture, or move them with the arrow keys.',
  box: 'Draw a box round the pin; it is looked for in there alone.',
  white: 'Touch a place of white paper or card in the picture: it says how the light was. Without it the metal is gone by.',
  measure: 'Draw along a bar or a measure that is on the proof, end to end, and type how long it says it is.',
};

const within = (v: number, most: number) => Math.min(most, Math.max(0, v));

/** A page drawn at true size: its width is as wide as the paper. */
const paper = (w: number, perMM: number): MarkedMeasure => ({ from: { x: 0, y: 0 }, to: { x: w, y: 0 }, mm: w / perMM });

const boxPath = ([x0, y0, x1, y1]: Box) => `M${x0} ${y0}H${x1}V${y1}H${x0}Z`;

function loops(all: readonly (readonly number[])[]): string {
  return all.map((loop) => {
    let d = '';
    for (let i = 0; i + 1 < loop.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${(loop[i] ?? 0).toFixed(1)} ${(loop[i + 1] ?? 0).toFixed(1)}`;
    return `${d}Z`;
  }).join('');
}

/** A stroke with the pointer, from where it begins to where it is. */
function useStroke(at: (e: PointerEvent) => Point, { onMove, onEnd }: { onMove: (from: Point, to: Point) => void; onEnd: () => void }) {
  const from = useRef<Point>(undefined);
  return {
    onPointerDown: (e: PointerEvent) => {
      if (e.button !== 0 || !(e.currentTarget instanceof Element)) return;
      e.currentTarget.setPointerCapture(e.pointerId);
      from.current = at(e);
    },
    onPointerMove: (e: PointerEvent) => { if (from.current) onMove(from.current, at(e)); },
    onPointerUp: () => { if (from.current) onEnd(); from.current = undefined; },
    onPointerCancel: () => { from.current = undefined; },
  };
}

interface HandleProps {
  n: number;
  at: Point;
  w: number;
  h: number;
  place: (e: PointerEvent) => Point;
  onMove: (to: Point) => void;
}

function Handle({ n, at, w, h, place, onMove }: HandleProps) {
  const gripped = useRef(false);
  const key = (e: KeyboardEvent) => {
    const step = e.shiftKey ? STEP / 10 : STEP;
    const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[e.key];
    if (!by) return;
    e.preventDefault();
    onMove({ x: at.x + (by[0] ?? 0), y: at.y + (by[1] ?? 0) });
  };
  return (
    <button
      type="button" class="proof-handle" aria-label={`Point ${n} of the outline`} style={{ left: `${(at.x / w) * 100}%`, top: `${(at.y / h) * 100}%` }}
      onPointerDown={(e) => { e.stopPropagation(); e.currentTarget.setPointerCapture(e.pointerId); gripped.current = true; }}
      onPointerMove={(e) => { if (gripped.current) onMove(place(e)); }}
      onPointerUp={() => (gripped.current = false)} onPointerCancel={() => (gripped.current = false)} onKeyDown={key}
    >{n}</button>
  );
}
