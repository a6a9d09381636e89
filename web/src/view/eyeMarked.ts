// What sight marks on the pin now.
import { computed } from '@preact/signals';
import { marksOn, neighbours, reading } from '../state/eye';
import { lookOf } from '../state/look';
import * as s from '../state/store';
import { unread } from '../words/sight';
import type { EyeMarked } from './EyeMarks';

/** Places lie in the drawing, so they stand on a pin of any size that looks the same. */
const ofShown = (told: { project: Parameters<typeof lookOf>[0] } | undefined) => {
  const shown = s.shown.value;
  return told !== undefined && shown !== undefined && (told.project === shown.project || lookOf(told.project) === lookOf(shown.project));
};

export const unreadNow = computed(() => (ofShown(reading.value) ? (reading.value?.answer.at.findings ?? []) : []));
export const pairsNow = computed(() => (ofShown(neighbours.value) ? (neighbours.value?.answer.pairs ?? []) : []));

export const eyeMarked = computed((): EyeMarked | undefined => {
  const spot = s.spot.value;
  const picked = spot?.kind === 'unread' ? unreadNow.value[spot.index] : spot?.kind === 'pair' ? pairsNow.value[spot.index] : undefined;
  const readings = marksOn.value ? unread(unreadNow.value) : [];
  return picked || readings.length > 0 ? { readings, picked } : undefined;
});
