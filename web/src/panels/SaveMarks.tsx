import { marking, saveMarks } from '../state/marks';

/** Takes the trouble spots into a paint program. */
export function SaveMarks() {
  return (
    <div class="save-marks">
      <button type="button" class="plain" aria-busy={marking.value || undefined} onClick={() => void saveMarks()}>Save the marks (PNG)</button>
      <p class="hint">Only the marks, numbered as here, at the pixels of your file: lay them over your drawing and mend it there.</p>
    </div>
  );
}
