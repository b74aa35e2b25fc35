import { inflateSync } from 'node:zlib';
import { pictureUnfit } from '../../problem/template-messages.js';
import type { Trouble } from '../../problem/trouble.js';
import type { ReportImage } from '../../report/index.js';

/** Longest side of a picture; a logo four centimetres wide has 500 at the finest print. */
const mostPixels = 2000;

/** Colour types of PNG: how many values a pixel has. */
const channelCounts: Record<number, number> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

type Reading = ReportImage | Trouble;

/** Reads what the header of a picture says, and whether a PDF for archives can hold it. */
export function readPicture(bytes: Uint8Array): Reading {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return readPng(bytes, view);
    if (startsWith(bytes, [0xff, 0xd8, 0xff])) return readJpeg(bytes, view);
  } catch {
    // Reading beyond the end, and pixels that cannot be unpacked.
    return pictureUnfit(
      'a picture that ends too early or is damaged',
      'a whole PNG or JPEG',
      'export it anew',
    );
  }
  return pictureUnfit('a file that is neither PNG nor JPEG', 'a PNG or a JPEG', 'export it as PNG');
}

function startsWith(bytes: Uint8Array, signature: number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

function tooLarge(width: number, height: number): Trouble | null {
  if (width > 0 && height > 0 && width <= mostPixels && height <= mostPixels) return null;
  return pictureUnfit(`${width} × ${height} pixels`, `1 to ${mostPixels} pixels a side`, 'scale it down');
}

/** A PNG: its header, and its pixels unpacked once, so that nothing is missing when the page is drawn. */
function readPng(bytes: Uint8Array, view: DataView): Reading {
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  const large = tooLarge(width, height);
  if (large) return large;
  const [depth, colourType, interlace] = [view.getUint8(24), view.getUint8(25), view.getUint8(28)];
  const channels = channelCounts[colourType];
  if (channels === undefined) throw new Error('no colour type of PNG');
  if (depth > 8) {
    return pictureUnfit(`${depth} bits per channel`, '8 bits per channel', 'export it with 8 bits');
  }
  if (interlace !== 0) {
    return pictureUnfit('an interlaced PNG', 'a PNG without interlacing', 'export it without');
  }
  const rowBytes = 1 + Math.ceil((width * channels * depth) / 8);
  const pixels = inflateSync(pngData(bytes, view), { maxOutputLength: rowBytes * height });
  if (pixels.length !== rowBytes * height) throw new Error('pixels are missing');
  return { format: 'png', bytes, widthPixels: width, heightPixels: height };
}

/** The packed pixels of all chunks; throws where a chunk runs beyond the end or the last one is missing. */
function pngData(bytes: Uint8Array, view: DataView): Uint8Array {
  const parts: Uint8Array[] = [];
  for (let at = 8; ; ) {
    const length = view.getUint32(at);
    const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    view.getUint32(at + 8 + length);
    if (kind === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + length));
    if (kind === 'IEND') return Buffer.concat(parts);
    at += length + 12;
  }
}

/** A JPEG: the frame header behind however many other segments. */
function readJpeg(bytes: Uint8Array, view: DataView): Reading {
  for (let at = 2; ; ) {
    const marker = view.getUint16(at);
    const isFrame = marker >= 0xffc0 && marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker);
    if (marker < 0xffc0 || marker === 0xffda) throw new Error('no frame');
    if (isFrame) return jpegFrame(bytes, view, marker, at + 4);
    at += 2 + view.getUint16(at + 2);
  }
}

function jpegFrame(bytes: Uint8Array, view: DataView, marker: number, at: number): Reading {
  const [depth, height, width] = [view.getUint8(at), view.getUint16(at + 1), view.getUint16(at + 3)];
  const channels = view.getUint8(at + 5);
  const large = tooLarge(width, height);
  if (large) return large;
  if (depth !== 8) {
    return pictureUnfit(`${depth} bits per channel`, '8 bits per channel', 'export it with 8 bits');
  }
  if (channels !== 1 && channels !== 3) {
    return pictureUnfit('a JPEG in CMYK, for a press', 'a JPEG in RGB or grey', 'export it as RGB');
  }
  if (marker > 0xffc2) {
    return pictureUnfit('a rare kind of JPEG', 'a baseline or progressive JPEG', 'export it anew');
  }
  if (!bytes.subarray(-16).some((byte, index, end) => byte === 0xff && end[index + 1] === 0xd9)) {
    throw new Error('no end');
  }
  return { format: 'jpeg', bytes, widthPixels: width, heightPixels: height };
}
