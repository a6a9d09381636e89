import { describe, expect, it } from 'vitest';
import { FLATS, HELLO } from '../../dev/canned/answers';
import { NEIGHBOURS, READING } from '../../dev/canned/eye';
import { detailWords, distance, ideaDoes, judged, measuredAs, nameOf, noSize, noticedWords, partedWords, readsAsOne, unread, unreadSays } from './sight';

const names = { flats: FLATS, plating: HELLO.platings[0] };
const [line, strip, letters, easy] = READING.at.findings;

describe('what is read', () => {
  it('keeps the two questions apart', () => {
    if (!line || !strip) throw new Error('no canned readings');
    expect(partedWords(line)).toEqual({ mark: '✕', words: 'It runs together with what lies beside it' });
    expect(noticedWords(line)).toEqual({ mark: '✓', words: 'Something is noticed there all the same' });
    expect(partedWords(strip).words).toBe('The two lines beside it run together');
    expect(noticedWords(strip)).toEqual({ mark: '✕', words: 'Nobody would miss it' });
    expect(partedWords({ ...line, parted: 'cannot-tell', needPx: 2400 })).toEqual({ mark: '?', words: 'This drawing is too coarse to say; one of 2400 px would tell' });
  });

  it('names a detail by what lies there', () => {
    if (!line || !strip) throw new Error('no canned readings');
    expect(detailWords(line, names)).toBe('The line between night blue and cream');
    expect(detailWords({ ...line, beside: [2, 2] }, names)).toBe('A line through cream');
    expect(detailWords(strip, names)).toBe('A strip of signal red');
    expect(nameOf(5, names)).toBe('gold');
    expect(nameOf(-1, { ...names, plating: undefined })).toBe('metal');
    expect(measuredAs(line)).toBe('0.14 mm wide; 0.29 mm is told apart from here');
    expect(noSize({ ...line, built: true })).toContain('build it wider');
  });

  it('tells lettering that is read from lettering that is read with ease', () => {
    if (!letters || !easy) throw new Error('no canned lettering');
    expect(partedWords(letters).words).toBe('Too low to be read');
    expect(partedWords(easy).words).toBe('It can be read; 5.82 mm would be read with ease');
    expect(partedWords({ ...easy, measured: 6 }).words).toBe('It is read with ease');
    expect(unread(READING.at.findings)).not.toContain(easy);
  });

  it('counts what is not read', () => {
    expect(unreadSays(0, 0)).toBe('Everything is told apart from there.');
    expect(unreadSays(3, 1)).toBe('2 places are not read; 1 cannot be told.');
    expect(unreadSays(1, 1)).toBe('1 cannot be told.');
  });

  it('says a distance as one would', () => {
    expect([400, 1000, 1500, 20000].map(distance)).toEqual(['400 mm', '1 m', '1.5 m', '20 m']);
  });
});

describe('colours that meet', () => {
  it('are judged in both lights and by five eyes in all', () => {
    const [pair] = NEIGHBOURS.pairs;
    if (!pair) throw new Error('no canned pair');
    expect(judged(pair).map((j) => [j.by, j.apart])).toEqual([['by colour', false], ['in dim light', false], ['without red', false], ['without green', false], ['without blue', true]]);
    expect(judged(pair)[1]?.says).toBe('read as one in dim light');
    expect(NEIGHBOURS.pairs.filter(readsAsOne)).toHaveLength(2);
  });

  it('are told apart by ideas that own up to what they break', () => {
    expect(ideaDoes({ pair: 0, shift: 0, fixes: 2, breaks: 1, words: '' })).toBe('It tells 2 pairs apart, and makes 1 other read as one.');
    expect(ideaDoes({ pair: 0, shift: 0, fixes: 1, breaks: 0, words: '' })).toBe('It tells this pair apart.');
  });
});
