import { describe, expect, it } from 'vitest';
import { readPicture } from '../../src/app/templates/read-picture.js';
import { jpeg, png } from '../render/pictures.js';

const receivedOf = (bytes: Uint8Array) => {
  const read = readPicture(bytes);
  return 'format' in read ? read.format : read.received;
};

describe('a picture for the letterhead', () => {
  it('is taken as PNG with or without alpha and colours, and as JPEG in RGB or grey', () => {
    for (const colourType of [0, 2, 3, 4, 6]) expect(receivedOf(png({ colourType }))).toBe('png');
    expect(receivedOf(png({ colourType: 3, depth: 1, width: 13 }))).toBe('png');
    expect(readPicture(jpeg())).toMatchObject({ format: 'jpeg', widthPixels: 40, heightPixels: 20 });
    expect(receivedOf(jpeg({ channels: 1, marker: 0xc2 }))).toBe('jpeg');
  });

  it('is refused with what was read when a PDF for archives cannot hold it', () => {
    expect(receivedOf(png({ depth: 16 }))).toBe('16 bits per channel');
    expect(receivedOf(png({ interlace: 1 }))).toBe('an interlaced PNG');
    expect(receivedOf(jpeg({ channels: 4 }))).toBe('a JPEG in CMYK, for a press');
    expect(receivedOf(jpeg({ depth: 12 }))).toBe('12 bits per channel');
    expect(receivedOf(jpeg({ marker: 0xc9 }))).toBe('a rare kind of JPEG');
    expect(receivedOf(Buffer.from('GIF89a.........'))).toBe('a file that is neither PNG nor JPEG');
    expect(receivedOf(Buffer.from('<svg/>'))).toBe('a file that is neither PNG nor JPEG');
  });

  it('is refused by its header alone when it has too many pixels', () => {
    expect(receivedOf(png({ width: 2001 }))).toBe('2001 × 12 pixels');
    expect(receivedOf(png({ width: 4_000_000_000, share: 0 }))).toBe('4000000000 × 12 pixels');
    expect(receivedOf(jpeg({ height: 0 }))).toBe('40 × 0 pixels');
  });

  it('is refused when it is cut short anywhere, or holds more or fewer pixels than its header says', () => {
    for (const whole of [png(), jpeg()]) {
      for (let end = 0; end < whole.length - 4; end++) {
        expect(readPicture(whole.slice(0, end))).toHaveProperty('severity', 'error');
      }
    }
    expect(receivedOf(png({ share: 0.5 }))).toMatch(/damaged/);
    expect(receivedOf(png({ share: 2 }))).toMatch(/damaged/);
  });
});
