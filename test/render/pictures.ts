import { deflateSync } from 'node:zlib';

/** Header fields of a PNG that a test may want otherwise. */
export interface PngWish {
  width?: number;
  height?: number;
  depth?: number;
  colourType?: number;
  interlace?: number;
  /** How many bytes of pixels are packed, of those that belong there. */
  share?: number;
}

const channelCounts = [1, 0, 3, 1, 2, 0, 4];

/** A small PNG: by default RGB with alpha, 8 bits. Its checksums are left at zero; nothing here reads them. */
export function png({
  width = 24,
  height = 12,
  depth = 8,
  colourType = 6,
  interlace = 0,
  share = 1,
}: PngWish = {}): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([depth, colourType, 0, 0, interlace], 8);
  const rowBytes = 1 + Math.ceil((width * channelCounts[colourType]! * depth) / 8);
  const pixels = Buffer.alloc(Math.min(1 << 22, Math.floor(rowBytes * height * share)));
  for (let at = 0; at < pixels.length; at++) pixels[at] = at % rowBytes === 0 ? 0 : (at * 7) % 256;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(pixels)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(kind: string, data: Buffer): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  return Buffer.concat([length, Buffer.from(kind, 'latin1'), data, Buffer.alloc(4)]);
}

/** The frame of a JPEG without its picture: enough for its header to be read. */
export function jpeg({ width = 40, height = 20, channels = 3, depth = 8, marker = 0xc0 } = {}): Uint8Array {
  const frame = Buffer.alloc(10 + 3 * channels);
  frame.set([0xff, marker, 0, 8 + 3 * channels, depth]);
  frame.writeUInt16BE(height, 5);
  frame.writeUInt16BE(width, 7);
  frame[9] = channels;
  return Buffer.concat([
    Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0]),
    frame,
    Buffer.from([0xff, 0xda, 0, 2, 0xff, 0xd9]),
  ]);
}
