// The clean curves of the pin, as a drawing in millimetres.
import { signal } from '@preact/signals';
import { faultOf } from './desk';
import { about } from './handed';
import { saveFile } from './save';
import * as s from './store';

/** The curves are being traced. */
export const tracing = signal(false);

export async function saveCurves(): Promise<void> {
  const p = s.asked.value;
  if (!p || tracing.value) return;
  tracing.value = true;
  try {
    const { answer, bytes } = await about(p, s.at.value, 'shapes', {}, { lane: 'shapes' });
    if (!bytes) return;
    saveFile(new Blob([bytes], { type: 'image/svg+xml' }), answer.fileName);
    s.said.value = `Saved ${answer.fileName}: ${answer.words}`;
  } catch (err) {
    const fault = faultOf(err);
    s.tell(fault.what, fault.do);
  } finally {
    tracing.value = false;
  }
}
