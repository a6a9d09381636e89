// The trouble spots alone, as a picture to lay over the drawing.
import { signal } from '@preact/signals';
import { atHand, faultOf } from './desk';
import { saveFile } from './save';
import * as s from './store';

/** The picture is being made: a large one takes a while. */
export const marking = signal(false);

export async function saveMarks(): Promise<void> {
  const p = s.asked.value;
  const engine = atHand.value;
  if (!p || !engine || marking.value) return;
  marking.value = true;
  try {
    const { answer, bytes } = await engine.call('marks', { picked: s.picked(p) }, { lane: 'marks' });
    if (!bytes) return;
    saveFile(new Blob([bytes], { type: 'image/png' }), answer.fileName);
    s.said.value = `Saved ${answer.fileName}: ${answer.words}`;
  } catch (err) {
    const fault = faultOf(err);
    s.tell(fault.what, fault.do);
  } finally {
    marking.value = false;
  }
}
