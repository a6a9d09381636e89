// Trouble spots as small numbered flags, with the spot itself drawn along its
// middle line.
import type { Finding } from '../engine/wire.gen';
import { kindWords, measuredWords } from '../words/findings';
import { poles, type Mapping, type Point } from './place';

/** More flags than this hide the pin; the list has them all. */
const MOST_FLAGS = 60;

/** Length of a pole that stands alone, px. */
const POLE = 14;

interface Props {
  findings: readonly Finding[];
  map: Mapping;
  picked: number | undefined;
  onFlag: (index: number, at: Point) => void;
}

export function SpotLines({ findings, map, picked }: Omit<Props, 'onFlag'>) {
  return (
    <g class="spots" aria-hidden="true">
      {findings.slice(0, MOST_FLAGS).map((f, i) => (
        <path key={i} d={lineOf(f, map)} class={`${f.verdict}${picked === i ? ' picked' : ''}`} />
      ))}
    </g>
  );
}

function lineOf(f: Finding, map: Mapping): string {
  let d = '';
  for (let i = 0; i + 1 < f.path.length; i += 2) {
    const p = map.toSheet(f.path[i] ?? 0, f.path[i + 1] ?? 0);
    d += `${i === 0 ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`;
  }
  return d;
}

export function Flags({ findings, map, picked, onFlag }: Props) {
  const few = findings.slice(0, MOST_FLAGS);
  const places = few.map((f) => map.toSheet(f.x, f.y));
  const lifts = poles(places);
  return (
    <ol class="flags" aria-label="Trouble spots on the pin">
      {few.map((f, i) => {
        const p = places[i] ?? { x: 0, y: 0 };
        return (
          <li key={i} style={{ left: `${p.x}px`, top: `${p.y}px` }} class={`${f.verdict}${picked === i ? ' picked' : ''}`}>
            <button type="button" style={{ paddingBottom: `${POLE + (lifts[i] ?? 0)}px` }} onClick={() => onFlag(i, p)} aria-label={`Trouble spot ${i + 1}: ${kindWords(f)}, ${measuredWords(f)}`}>
              <span>{i + 1}{f.verdict === 'cannot-tell' ? '?' : ''}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
