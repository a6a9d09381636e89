// The section of sight, kept up while it is on the page.
import { useEffect } from 'preact/hooks';
import { SightPanel, type SightProps } from '../panels/SightPanel';
import { bounds } from '../state/bounds';
import * as eye from '../state/eye';
import { followSeenBuys } from '../state/eyeBuys';
import { makeIdea, trial, tryIdea } from '../state/eyeIdeas';
import { eyeLook, followLook, lookProblem, lookShare, plainLook, setLookSide } from '../state/eyeLook';
import { withDesign, withSize, withVersion } from '../state/project';
import { matched, perMM, trueSize } from '../state/screen';
import * as s from '../state/store';
import type { Design } from '../engine/wire.gen';
import { mm } from '../words/length';
import { distance } from '../words/sight';
import { both } from '../words/words';

const onSize = (size: number, words: string) => s.change((p) => withSize(p, size), `Size ${words}`);

export default function Sight() {
  useEffect(eye.followEye, []);
  useEffect(followLook, []);
  useEffect(followSeenBuys, []);
  const d = s.design.value;
  if (!d) return null;
  const check = s.shown.value?.check;
  const glance = eye.glance.value;
  return (
    <SightPanel
      size={{ check, offered: glance?.answer.made.map((r) => r.from.mm) ?? [], design: d, bounds: bounds.value, onSize, onBy: (by) => measureBy(by, d) }}
      glance={glance?.answer} glanceLate={eye.isLate(glance)} where={whereOf(glance?.gaze)}
      mm={d.size.mm} sizeSays={sizeSays(d.size.mm)}
      onDrag={(size) => s.drag((p) => withSize(p, size))}
      onDrop={() => s.letGo(`Size ${mm(s.design.value?.size.mm ?? d.size.mm, 1)}`)}
      onOpen={(open) => (eye.sightOpen.value = open)}
      trueSize={trueSize.value} perMM={perMM.value} onMatched={(px) => matched({ object: trueSize.value?.card.w ?? 0, px })}
      eye={eyeProps()}
    />
  );
}

/** While a size is dragged the engine has not put it into words yet. */
function sizeSays(size: number): string {
  const shown = eye.glance.value?.answer.asked;
  return shown && shown.mm === size ? both(shown) : mm(size, 1);
}

function whereOf(g: eye.Gaze | undefined): string {
  const from = g?.viewing.distance ?? 0;
  return s.hello.value?.eye.distances.find((x) => x.mm === from)?.name ?? `from ${distance(from)}`;
}

/** The same pin by another measure: the number changes, the pin does not. */
function measureBy(by: Design['size']['by'], d: Design): void {
  const c = s.shown.value?.check;
  const now = c && { width: c.w, height: c.h, longest: c.longest, mean: c.mean }[by];
  s.change((p) => withDesign(p, { size: { mm: now ?? d.size.mm, by } }), `Measured by ${by}`);
}

const toSheet = () => document.querySelector('.stage')?.scrollIntoView({ block: 'nearest' });

function walk(kind: 'unread' | 'pair', index: number): void {
  s.turned.value = false;
  s.spot.value = { kind, index, x: 0, y: 0 };
  toSheet();
}

function eyeProps(): SightProps['eye'] {
  const usual = s.hello.value?.eye;
  const usualGaze = eye.usualGaze.value;
  const gaze = eye.gaze.value;
  if (!usual || !usualGaze || !gaze) return undefined;
  const [reading, neighbours] = [eye.reading.value, eye.neighbours.value];
  const names = { flats: s.shown.value?.check.flats.flats ?? [], plating: s.plating.value };
  const readLate = eye.isLate(reading);
  const pairLate = eye.isLate(neighbours);
  const { viewing, thresholds } = gaze;
  return {
    distances: {
      usual, viewing, thresholds, reading: reading?.answer, late: readLate, onSize,
      onDistance: (to) => eye.lookSo({ viewing: { ...viewing, distance: to } }),
      onAcuity: (text) => eye.typedGaze(text, (g, acuity) => ({ ...g, viewing: { ...g.viewing, acuity } })),
    },
    unread: {
      reading: reading?.answer, names, noticed: thresholds.noticed, late: readLate, asDrawn: (reading?.asDrawn ?? false) && (s.design.value?.recipes.length ?? 0) > 0,
      marks: eye.marksOn.value, onSize, onWalk: (i) => walk('unread', i),
      onMarks: (on) => { eye.marksOn.value = on; if (on) { s.turned.value = false; toSheet(); } },
    },
    look: {
      plain: plainLook.value, eye: eyeLook.value, late: eye.isLate(eyeLook.value), share: lookShare.value, problem: lookProblem.value, perMM: perMM.value,
      sure: trueSize.value?.says ?? '', cloth: gaze.cloth, cloths: usual.cloths, onSide: setLookSide, onCloth: (cloth) => eye.lookSo({ cloth }),
    },
    neighbours: {
      neighbours: neighbours?.answer, names, thresholds, late: pairLate, trial: trial.value, onWalk: (i) => walk('pair', i), onMake: makeIdea,
      onTry: (idea, pair) => { if (neighbours) void tryIdea(neighbours.project, idea, pair); },
    },
    platings: {
      ranked: neighbours?.answer.platings ?? [], platings: s.hello.value?.platings ?? [], names, late: pairLate,
      onPlating: (plating) => s.change((p) => withVersion(p, { plating }), `Plating ${plating}`),
    },
    thresholds: {
      thresholds, usual: usualGaze.thresholds, onUsual: () => eye.lookSo({ thresholds: usualGaze.thresholds }),
      onThreshold: (key, text) => eye.typedGaze(text, (g, n) => ({ ...g, thresholds: { ...g.thresholds, [key]: n } })),
    },
  };
}
