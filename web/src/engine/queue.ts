// Which call runs next. One runs at a time; in each lane one more waits, and a
// newer one takes its place, so that dragging never piles up work. Small
// questions, answered in no time, go before the long ones that wait.

export interface Job {
  lane: string;
  /** Told that a newer job took its place. */
  drop(): void;
}

/** How the lanes of small questions are called. */
export const SMALL = 'small: ';

export class Queue<J extends Job> {
  private waiting: J[] = [];

  /** Puts a job in line. A waiting job of the same lane is dropped, and the
   * newer one has its place: a lane asked often never starves the others. */
  push(job: J): void {
    const at = this.waiting.findIndex((j) => j.lane === job.lane);
    if (at < 0) {
      this.waiting.splice(this.placeFor(job), 0, job);
      return;
    }
    const old = this.waiting[at];
    this.waiting[at] = job;
    old?.drop();
  }

  private placeFor(job: J): number {
    if (!job.lane.startsWith(SMALL)) return this.waiting.length;
    return this.waiting.findLastIndex((j) => j.lane.startsWith(SMALL)) + 1;
  }

  /** Puts a job before all others, whatever waits. */
  pushFirst(job: J): void {
    this.waiting.unshift(job);
  }

  next(): J | undefined {
    return this.waiting.shift();
  }

  /** Takes a job out of the line; false when it was not waiting. */
  remove(job: J): boolean {
    const at = this.waiting.indexOf(job);
    if (at >= 0) this.waiting.splice(at, 1);
    return at >= 0;
  }

  drain(): J[] {
    return this.waiting.splice(0);
  }
}
