import { describe, expect, it } from 'vitest';
import { Draft, type Reader } from './draft';
import type { Outcome } from './typed';

/** A field whose reader answers when told to. */
function field(value = '32') {
  const log: string[] = [];
  const waiting = new Map<string, (o: Outcome) => void>();
  const f = {
    log,
    value,
    draft: new Draft(() => undefined),
    asked: [] as string[],
    reader: (): Reader => ({
      value: f.value,
      onSet: (text) => new Promise((done) => { f.asked.push(text); waiting.set(text, done); }),
      onDone: () => log.push('done'),
    }),
    /** Types a text and sends it off. */
    send: (text: string) => { f.draft.write(text); void f.draft.commit(f.reader); },
    /** The engine reads it. */
    take: async (text: string) => { waiting.get(text)?.(() => { log.push(`took ${text}`); f.value = text; }); await tick(); },
    refuse: async (text: string) => { waiting.get(text)?.('no length'); await tick(); },
  };
  return f;
}

const tick = () => new Promise((r) => { setTimeout(r); });

describe('a draft', () => {
  it('shows the typed text until it was read, then the value', async () => {
    const f = field();
    f.send('1 1/4 in');
    expect([f.draft.text, f.draft.busy]).toEqual(['1 1/4 in', true]);
    await f.take('1 1/4 in');
    expect([f.draft.text, f.draft.busy, f.log]).toEqual([undefined, false, ['took 1 1/4 in', 'done']]);
  });

  it('is asked about once, by Enter and by leaving', async () => {
    const f = field();
    f.send('40');
    void f.draft.commit(f.reader);
    await f.take('40');
    expect(f.asked).toEqual(['40']);
    expect(f.log).toEqual(['took 40', 'done']);
  });

  it('gives way to a newer text of the same field, whichever is read first', async () => {
    const f = field();
    f.send('3');
    f.send('35');
    await f.take('35');
    await f.take('3');
    expect(f.log).toEqual(['took 35', 'done']);
  });

  it('keeps what is typed while the text before is read', async () => {
    const f = field();
    f.send('40');
    f.draft.write('41');
    await f.take('40');
    expect(f.draft.text).toBe('41');
    expect(f.log).toEqual(['took 40']);
    void f.draft.commit(f.reader);
    await f.take('41');
    expect(f.log).toEqual(['took 40', 'took 41', 'done']);
  });

  it('says what cannot be read and keeps it; leaving asks nothing again', async () => {
    const f = field();
    f.send('big');
    await f.refuse('big');
    expect([f.draft.text, f.draft.complaint]).toEqual(['big', 'no length']);
    void f.draft.commit(f.reader);
    expect(f.asked).toEqual(['big']);
    f.send('40');
    await f.take('40');
    expect([f.draft.complaint, f.value]).toEqual([undefined, '40']);
  });

  it('given up while it is read is not taken', async () => {
    const f = field();
    f.send('40');
    f.draft.giveUp(f.reader());
    await f.take('40');
    expect(f.log).toEqual(['done']);
    expect(f.value).toBe('32');
  });

  it('asks nothing when nothing changed', () => {
    const f = field();
    void f.draft.commit(f.reader);
    f.send('32');
    expect(f.asked).toEqual([]);
    expect(f.log).toEqual(['done', 'done']);
  });

  it('takes an answer that is there at once', async () => {
    const f = field();
    const at: Reader = { value: 'Buoy', onSet: (t) => (t.trim() ? void f.log.push(t) : 'A pin wants a name.') };
    f.draft.write('  ');
    await f.draft.commit(() => at);
    expect(f.draft.complaint).toBe('A pin wants a name.');
    f.draft.write('Gull');
    await f.draft.commit(() => at);
    expect([f.draft.text, f.log]).toEqual([undefined, ['Gull']]);
  });
});
