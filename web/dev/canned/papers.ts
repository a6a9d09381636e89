// A backing card and a message as the engine answers them, by hand.
import type { CardLaid, Inquiry } from '../../src/engine/wire.gen';

const OUTLINE = 'M16 0C25 0 32 7 32 16C32 25 25 32 16 32C7 32 0 25 0 16C0 7 7 0 16 0Z';

export const CARD: CardLaid = {
  card: { hang: { kind: 'round' }, texts: [{ words: 'Skerry Light', points: 12, x: 27.5, y: 60, rgb: { r: 34, g: 34, b: 34 } }] },
  laid: {
    w: 55, h: 85, bleed: 3, safe: 4, pin: { x: 11.5, y: 20 }, pinW: 32, pinH: 32, outline: OUTLINE,
    holes: [{ x: 20, y: 32, across: 1.5, no: 2 }, { x: 35, y: 32, across: 1.5, no: 1 }],
    hang: { kind: 'round', w: 6, h: 6, down: 7 },
    texts: [{ x: 15, y: 60, d: 'M0 0H25V-3H0Z', box: [15, 57, 40, 60] }],
    warnings: [{ note: false, what: 'Hole 1 is only 2.5 mm from the edge; the card may tear. Keep 3 mm.', box: [34, 31, 36, 33] }, { note: true, what: 'Your picture has 200 pixels an inch at this size; printers ask for 300.', box: [0, 0, 55, 85] }],
    says: 'A card of 55 mm by 85 mm, upright, with 2 holes of 1.5 mm.',
  },
  sheet: { w: 210, h: 297, places: [], marks: [], gutter: 6, says: '9 cards on A4, upright, 6 mm apart.' },
  kinds: [{ kind: '', name: 'business card, 85 × 55 mm', w: 85, h: 55 }, { kind: 'bank', name: 'bank card, 85.60 × 53.98 mm', w: 85.6, h: 53.98 }],
  usual: { hole: 1.5, bleed: 3, safe: 4, corner: 3.18 },
};

export const INQUIRY: Inquiry = {
  subject: 'Quote for enamel pins: Skerry Light, 100 pieces',
  body: 'Hello,\n\nI would like a quote for the enamel pin below.\n\nSkerry Light\n- Size: 25.4 mm wide, 32 mm high.\n\nPlease tell me\n- the days for carriage to [ where to deliver: town, post code, country ];\n\nThank you,\n[ your name ]\n',
  gaps: ['[ where to deliver: town, post code, country ]', '[ your name ]'],
};
