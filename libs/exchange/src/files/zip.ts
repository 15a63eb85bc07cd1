import { createInflateRaw } from 'node:zlib';
import { isWrongEncoding } from '../domain/decode-text.js';
import { UnreadableFile } from '../domain/sheet.js';

/** What a workbook may unpack to. Compared with what it says first, and with what really comes out. */
const ZIP_LIMITS = {
  entries: 1_000,
  entryBytes: 48 * 1_048_576,
  allBytes: 80 * 1_048_576,
} as const;

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const STORED = 0;
const DEFLATED = 8;

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly localAt: number;
}

const broken = () =>
  new UnreadableFile('The workbook is damaged or incomplete. Save it again as .xlsx.');
const tooLarge = () =>
  new UnreadableFile(
    `The workbook unpacks to far more than its size, over ${ZIP_LIMITS.allBytes / 1_048_576} MB. Nothing of it was read.`,
  );

/**
 * The parts of a workbook (a ZIP archive, PKWARE APPNOTE 6.3). Memory stays bounded whatever the file
 * says: sizes are checked in the list of contents before anything is unpacked, and parts come out in
 * small pieces that are counted as they come.
 */
export class ZipParts {
  private readonly entries: ReadonlyMap<string, Entry>;
  private unpacked = 0;

  constructor(private readonly file: Buffer) {
    this.entries = listEntries(file);
  }

  has(name: string): boolean {
    return this.entries.has(name);
  }

  /** The text of a part in pieces; ends the file as unreadable when it grows past its limit. */
  async *text(name: string): AsyncGenerator<string> {
    const entry = this.entries.get(name);
    if (!entry) throw broken();
    const decoder = new TextDecoder('utf-8', { fatal: true });
    let bytes = 0;
    try {
      for await (const piece of this.pieces(entry)) {
        bytes += piece.length;
        this.unpacked += piece.length;
        if (bytes > ZIP_LIMITS.entryBytes || this.unpacked > ZIP_LIMITS.allBytes) throw tooLarge();
        yield decoder.decode(piece, { stream: true });
      }
      yield decoder.decode();
    } catch (error) {
      if (isWrongEncoding(error) || isBrokenStream(error)) throw broken();
      throw error;
    }
  }

  private pieces(entry: Entry): AsyncIterable<Buffer> | Buffer[] {
    const { file } = this;
    const at = entry.localAt;
    if (at + 30 > file.length || file.readUInt32LE(at) !== LOCAL) throw broken();
    const from = at + 30 + file.readUInt16LE(at + 26) + file.readUInt16LE(at + 28);
    const packed = file.subarray(from, from + entry.packedBytes);
    if (packed.length !== entry.packedBytes) throw broken();
    if (entry.method === STORED) return [packed];
    if (entry.method !== DEFLATED) throw broken();
    const inflate = createInflateRaw();
    inflate.end(packed);
    return inflate;
  }
}

/** zlib says what is wrong with a stream by a code. */
function isBrokenStream(error: unknown): boolean {
  if (typeof error !== 'object' || error === null || !('code' in error)) return false;
  return String(error.code).startsWith('Z_');
}

function listEntries(file: Buffer): Map<string, Entry> {
  const end = endRecord(file);
  const count = file.readUInt16LE(end + 10);
  if (count > ZIP_LIMITS.entries) {
    throw new UnreadableFile(`The workbook has ${count} parts. Save it again without pictures.`);
  }
  const entries = new Map<string, Entry>();
  let at = file.readUInt32LE(end + 16);
  let all = 0;
  for (let i = 0; i < count; i += 1) {
    if (at + 46 > file.length || file.readUInt32LE(at) !== CENTRAL) throw broken();
    if ((file.readUInt16LE(at + 8) & 1) === 1) {
      throw new UnreadableFile('The workbook is protected by a password. Save it without one.');
    }
    const nameLength = file.readUInt16LE(at + 28);
    const name = file.toString('utf8', at + 46, at + 46 + nameLength);
    const entry: Entry = {
      name,
      method: file.readUInt16LE(at + 10),
      packedBytes: file.readUInt32LE(at + 20),
      bytes: file.readUInt32LE(at + 24),
      localAt: file.readUInt32LE(at + 42),
    };
    all += entry.bytes;
    if (entry.bytes > ZIP_LIMITS.entryBytes || all > ZIP_LIMITS.allBytes) throw tooLarge();
    entries.set(name, entry);
    at += 46 + nameLength + file.readUInt16LE(at + 30) + file.readUInt16LE(at + 32);
  }
  return entries;
}

/** The end of the list of contents; it is found from the back, before a comment of any length. */
function endRecord(file: Buffer): number {
  const first = Math.max(0, file.length - 22 - 65_535);
  for (let at = file.length - 22; at >= first; at -= 1) {
    if (file.readUInt32LE(at) === END) return at;
  }
  throw broken();
}
