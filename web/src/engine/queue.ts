// Which call runs next. One runs at a time; in each lane one more waits, and a
// newer one takes its place, so that dragging never piles up work.

export interface Job {
  lane: string;
  /** Told that a newer job took its place. */
  drop(): void;
}

export class Queue<J extends Job> {
  private waiting: J[] = [];

  /** Puts a job in line. A waiting job of the same lane is dropped, and the
   * newer one has its place: a lane asked often never starves the others. */
  push(job: J): void {
    const at = this.waiting.findIndex((j) => j.lane === job.lane);
    if (at < 0) {
      this.waiting.push(job);
      return;
    }
    const old = this.waiting[at];
    this.waiting[at] = job;
    old?.drop();
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
