import { CUT_SHORT, LOCKED_WITH_A_PASSWORD, TOO_LARGE_PACKED } from "./words.js";

/**
 * Zip files (APPNOTE 6.3.10 of their makers, ISO/IEC 21320-1) by what the browser has itself:
 * several files read out of one, or put into one.
 */
const END = 0x06054b50;
const LISTED = 0x02014b50;
const HEAD = 0x04034b50;
const DEFLATED = 8;
const MOST = 200_000_000; // bytes of one file once unpacked
const LONGEST_COMMENT = 65_535;
const UTF8 = 0x0800;
const SUMS = Int32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (0xedb88320 & -(sum & 1));
  return sum;
});

/** A zip file that cannot be read. */
export class NoZip extends Error {}

/** The files of a zip file by their names, each a function that gives its bytes. Throws NoZip. */
export function unzipped(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return listed(bytes, view, endOf(view));
  } catch (error) {
    if (error instanceof RangeError) throw new NoZip(CUT_SHORT);
    throw error;
  }
}

/** Where the record at the end begins. */
function endOf(view) {
  const first = Math.max(0, view.byteLength - LONGEST_COMMENT - 22);
  for (let at = view.byteLength - 22; at >= first; at -= 1)
    if (view.getUint32(at, true) === END) return at;
  throw new NoZip(CUT_SHORT);
}

function listed(bytes, view, end) {
  const files = new Map();
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  for (let n = 0; n < count; n += 1) {
    if (view.getUint32(at, true) !== LISTED) throw new NoZip(CUT_SHORT);
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const [sum, packed, whole] = [16, 20, 24].map((place) => view.getUint32(at + place, true));
    const [named, extra, said] = [28, 30, 32].map((place) => view.getUint16(at + place, true));
    const head = view.getUint32(at + 42, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + named));
    const about = { method, sum, packed, whole, head };
    if ((flags & 1) === 1)
      files.set(name, () => {
        throw new NoZip(LOCKED_WITH_A_PASSWORD);
      });
    else files.set(name, () => unpacked(bytes, view, about));
    at += 46 + named + extra + said;
  }
  return files;
}

async function unpacked(bytes, view, { method, sum, packed, whole, head }) {
  if (whole > MOST) throw new NoZip(TOO_LARGE_PACKED);
  if (head + 30 > view.byteLength || view.getUint32(head, true) !== HEAD)
    throw new NoZip(CUT_SHORT);
  const from = head + 30 + view.getUint16(head + 26, true) + view.getUint16(head + 28, true);
  const inside = bytes.subarray(from, from + packed);
  let out;
  try {
    out =
      method === DEFLATED
        ? await through(inside, new DecompressionStream("deflate-raw"), whole)
        : inside;
  } catch (error) {
    throw error instanceof NoZip ? error : new NoZip(CUT_SHORT);
  }
  if (out.length !== whole || crc32(out) !== sum) throw new NoZip(CUT_SHORT);
  return out;
}

/** All that comes out of a stream; no more than `most` bytes. */
async function through(bytes, stream, most = MOST) {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts = [];
  let length = 0;
  for (;;) {
    // oxlint-disable-next-line no-await-in-loop -- a stream gives one part after the other
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) throw new NoZip(CUT_SHORT);
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/** The check sum of ISO 3309, as zip files have it. */
function crc32(bytes) {
  let sum = ~0;
  for (const byte of bytes) sum = (sum >>> 8) ^ SUMS[(sum ^ byte) & 0xff];
  return ~sum >>> 0;
}

/** A zip file of these files: [[name, bytes]]. The same files make the same bytes. */
export async function zipped(files) {
  const parts = [];
  const directory = [];
  let at = 0;
  for (const [name, bytes] of files) {
    const called = new TextEncoder().encode(name);
    // oxlint-disable-next-line no-await-in-loop -- each file stands behind the one before it
    const packed = await through(bytes, new CompressionStream("deflate-raw"));
    const about = [20, UTF8, DEFLATED, 0, 0x21]; // 1 January 1980: no time of its own
    const sizes = [crc32(bytes), packed.length, bytes.length];
    parts.push(written(HEAD, about, sizes, [called.length, 0]), called, packed);
    directory.push(
      written(LISTED, [20, ...about], sizes, [called.length, 0, 0, 0, 0, 0, 0], at),
      called,
    );
    at += 30 + called.length + packed.length;
  }
  const length = directory.reduce((sum, part) => sum + part.length, 0);
  const end = new DataView(new ArrayBuffer(22));
  end.setUint32(0, END, true);
  end.setUint16(8, files.length, true);
  end.setUint16(10, files.length, true);
  end.setUint32(12, length, true);
  end.setUint32(16, at, true);
  return new Blob([...parts, ...directory, end], { type: "application/zip" });
}

/** A head of the format: its mark, halves, sizes, halves again, and where the file begins. */
function written(mark, about, sizes, rest, at = null) {
  const long = [...sizes];
  const view = new DataView(
    new ArrayBuffer(
      4 + about.length * 2 + long.length * 4 + rest.length * 2 + (at === null ? 0 : 4),
    ),
  );
  let place = 4;
  view.setUint32(0, mark, true);
  for (const half of about) place = (view.setUint16(place, half, true), place + 2);
  for (const size of long) place = (view.setUint32(place, size, true), place + 4);
  for (const half of rest) place = (view.setUint16(place, half, true), place + 2);
  if (at !== null) view.setUint32(place, at, true);
  return new Uint8Array(view.buffer);
}
