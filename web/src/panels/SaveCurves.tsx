import { saveCurves, tracing } from '../state/curves';

/** The lines and areas as curves, to take along as a file. */
export function SaveCurves() {
  return (
    <div class="save-marks">
      <button type="button" class="plain" aria-busy={tracing.value || undefined} onClick={() => void saveCurves()}>Save clean curves (SVG, mm)</button>
      <p class="hint">Outline, metal and each colour as smooth shapes at true size, a layer each: for a vector program, or for the maker.</p>
    </div>
  );
}
