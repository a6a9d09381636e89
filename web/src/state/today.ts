// Today where the person is. The day is read off the local clock: a moment
// written as UTC may be of the day before or after.

/** The local day of a moment, as ISO 8601 has it: "2027-02-06". */
export function dayOf(moment: Date): string {
  const [y, m, d] = [moment.getFullYear(), moment.getMonth() + 1, moment.getDate()];
  return [String(y).padStart(4, '0'), String(m).padStart(2, '0'), String(d).padStart(2, '0')].join('-');
}

/** How long the local day of a moment lasts from there, ms. Where clocks are put
 * forward at midnight the next day begins at one. */
export function leftOfDay(moment: Date): number {
  const next = new Date(moment.getFullYear(), moment.getMonth(), moment.getDate() + 1);
  return next.getTime() - moment.getTime();
}
