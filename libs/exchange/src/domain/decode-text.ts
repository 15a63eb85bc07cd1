import { UnreadableFile } from './sheet.js';

const BYTE_ORDER_MARKS: readonly (readonly [string, readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
];

/**
 * The text of a file: UTF-8, or UTF-16 when its byte order mark says so. Anything else is refused with
 * the line and the bytes that are not UTF-8, because a guessed encoding turns names into others.
 */
export function decodeText(bytes: Uint8Array): string {
  for (const [encoding, mark] of BYTE_ORDER_MARKS) {
    if (!mark.every((byte, i) => bytes[i] === byte)) continue;
    return decoded(encoding, bytes.subarray(mark.length), bytes);
  }
  return decoded('utf-8', bytes, bytes);
}

function decoded(encoding: string, content: Uint8Array, whole: Uint8Array): string {
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(content);
  } catch (error) {
    if (!isWrongEncoding(error)) throw error;
    if (encoding !== 'utf-8') {
      throw new UnreadableFile(
        `The file begins like ${encoding.toUpperCase()} but holds half a character. Save it as UTF-8.`,
      );
    }
    throw new UnreadableFile(brokenUtf8(whole));
  }
}

/** What the decoder throws at bytes that are not of its encoding. */
export function isWrongEncoding(error: unknown): boolean {
  if (typeof error !== 'object' || error === null || !('code' in error)) return false;
  return error.code === 'ERR_ENCODING_INVALID_ENCODED_DATA';
}

function brokenUtf8(bytes: Uint8Array): string {
  const at = firstBroken(bytes);
  let line = 1;
  for (let i = 0; i < at; i += 1) if (bytes[i] === 0x0a) line += 1;
  const shown = [...bytes.subarray(at, at + 4)].map((b) => b.toString(16).padStart(2, '0'));
  return (
    `Line ${line} holds bytes that are not UTF-8: ${shown.join(' ').toUpperCase()} ` +
    `(byte ${at + 1} of the file). Save the file as "CSV UTF-8" and send it again.`
  );
}

/** Where the first sequence begins that UTF-8 (RFC 3629) does not know. */
function firstBroken(bytes: Uint8Array): number {
  let at = 0;
  while (at < bytes.length) {
    const length = sequenceLength(bytes, at);
    if (length === 0) return at;
    at += length;
  }
  return at;
}

function sequenceLength(bytes: Uint8Array, at: number): number {
  const first = bytes[at] ?? 0;
  if (first < 0x80) return 1;
  const length = first >= 0xc2 && first < 0xe0 ? 2 : first < 0xf0 ? 3 : first < 0xf5 ? 4 : 0;
  if (first < 0xc2 || length === 0) return 0;
  const second = bytes[at + 1] ?? 0;
  const least = first === 0xe0 ? 0xa0 : first === 0xf0 ? 0x90 : 0x80;
  const most = first === 0xed ? 0x9f : first === 0xf4 ? 0x8f : 0xbf;
  if (second < least || second > most) return 0;
  for (let i = 2; i < length; i += 1) {
    const next = bytes[at + i] ?? 0;
    if (next < 0x80 || next > 0xbf) return 0;
  }
  return length;
}
