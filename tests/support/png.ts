/** Reads a PNG as far as the tests need it: true colour with or without alpha, 8 bits, not interlaced (W3C PNG, third edition). */
import assert from 'node:assert/strict';
import { inflateSync } from 'node:zlib';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** How dark a pixel is, 0 white to 255 black. */
  darkness(x: number, y: number): number;
}

const SIGNATURE = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
/** By the colour type of the header. */
const BYTES_A_PIXEL: Readonly<Record<number, number>> = { 2: 3, 6: 4 };

export function readPng(bytes: Uint8Array): Picture {
  const file = Buffer.from(bytes);
  assert.deepEqual(file.subarray(0, 8), SIGNATURE);
  const width = file.readUInt32BE(16);
  const height = file.readUInt32BE(20);
  const [depth, colour, ...method] = file.subarray(24, 29);
  const bytesAPixel = BYTES_A_PIXEL[colour!];
  assert.deepEqual([depth, ...method], [8, 0, 0, 0], '8 bits, not interlaced');
  assert.ok(bytesAPixel, 'true colour');
  const pixels = unfiltered(
    inflateSync(Buffer.concat(dataChunks(file))),
    width * bytesAPixel,
    height,
    bytesAPixel,
  );
  return { width, height, darkness: (x, y) => 255 - pixels[(y * width + x) * bytesAPixel]! };
}

function dataChunks(file: Buffer): Buffer[] {
  const chunks: Buffer[] = [];
  for (let at = 8; at < file.length;) {
    const length = file.readUInt32BE(at);
    if (file.toString('latin1', at + 4, at + 8) === 'IDAT')
      chunks.push(file.subarray(at + 8, at + 8 + length));
    at += length + 12;
  }
  return chunks;
}

/** Undoes the five filter types of section 9.2. */
function unfiltered(data: Buffer, rowBytes: number, height: number, bytesAPixel: number): Uint8Array {
  const out = new Uint8Array(rowBytes * height);
  for (let y = 0; y < height; y++) {
    const filter = data[y * (rowBytes + 1)]!;
    for (let i = 0; i < rowBytes; i++) {
      const at = y * rowBytes + i;
      const left = i >= bytesAPixel ? out[at - bytesAPixel]! : 0;
      const up = y > 0 ? out[at - rowBytes]! : 0;
      const upLeft = y > 0 && i >= bytesAPixel ? out[at - rowBytes - bytesAPixel]! : 0;
      const guesses = [0, left, up, (left + up) >> 1, paeth(left, up, upLeft)];
      out[at] = data[y * (rowBytes + 1) + 1 + i]! + guesses[filter]!;
    }
  }
  return out;
}

function paeth(a: number, b: number, c: number): number {
  const guess = a + b - c;
  const [da, db, dc] = [Math.abs(guess - a), Math.abs(guess - b), Math.abs(guess - c)];
  if (da <= db && da <= dc) return a;
  return db <= dc ? b : c;
}
