// What each neighbouring choice costs, for the project on the sheet.
import { signal } from '@preact/signals';
import type { Choice, Project } from '../engine/wire.gen';
import { atHand } from './desk';
import { besideOf } from './items';
import * as s from './store';

export const choices = signal<{ project: Project; rows: Choice[] } | undefined>(undefined);

export async function askChoices(p: Project): Promise<void> {
  if (s.asked.value !== p || s.dragged.value || choices.value?.project === p) return;
  try {
    const beside = await besideOf(p);
    const got = await atHand.value?.call('choices', { picked: s.picked(p), ...beside }, { lane: 'choices' });
    if (got && s.asked.value === p) choices.value = { project: p, rows: got.answer.rows };
  } catch {
    // Overtaken by a newer wish; or the check has said already what is wrong.
  }
}
