// What stands half done in a field: typed and not taken yet. It outlives
// whatever is answered meanwhile, and each text is asked about once.
import type { Outcome } from './typed';

export interface Reader {
  /** What the field shows when nothing is typed. */
  value: string;
  onSet: (text: string) => Outcome | undefined | Promise<Outcome | undefined>;
  onDone?: (() => void) | undefined;
}

export class Draft {
  /** Missing when nothing was typed since the last text was taken. */
  text: string | undefined;
  complaint: string | undefined;
  /** A text is out to be read. */
  busy = false;
  private out: { text: string } | undefined;
  private refused: string | undefined;

  constructor(private readonly changed: () => void) {}

  write(text: string): void {
    this.text = text;
    this.changed();
  }

  giveUp(r: Reader): void {
    this.out = this.refused = undefined;
    this.clear();
    r.onDone?.();
  }

  /** Sends what was typed to be read. `latest` gives the reader as it is when the answer comes. */
  async commit(latest: () => Reader): Promise<void> {
    const { text } = this;
    // Enter and then leaving, or leaving what was refused, asks nothing new.
    if (text !== undefined && (this.out?.text === text || this.refused === text)) return;
    if (text === undefined || text === latest().value) {
      this.giveUp(latest());
      return;
    }
    const mine = { text };
    this.out = mine;
    this.busy = true;
    this.changed();
    const got = await latest().onSet(text);
    // Given up, or another text was sent since: then that one counts.
    if (this.out === mine) this.answered(text, got, latest());
  }

  private answered(text: string, got: Outcome | undefined, r: Reader): void {
    this.out = undefined;
    this.busy = false;
    if (typeof got === 'string') {
      this.refused = text;
      this.complaint = got;
      this.changed();
      return;
    }
    this.refused = undefined;
    got?.();
    // What was typed since stays.
    if (this.text === text) {
      this.clear();
      r.onDone?.();
    } else this.changed();
  }

  private clear(): void {
    this.text = this.complaint = undefined;
    this.busy = false;
    this.changed();
  }
}
