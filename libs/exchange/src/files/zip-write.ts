import { promisify } from 'node:util';
import { crc32, deflateRaw } from 'node:zlib';

export interface PlainPart {
  readonly name: string;
  readonly content: string;
}

const deflated = promisify(deflateRaw) as (input: Buffer) => Promise<Buffer>;

const VERSION = 20;
const UTF8_NAMES = 0x0800;
const DEFLATED = 8;
const DAY_ONE = 0x21; // 1 January 1980: the same content is the same file

/** Packs parts into a ZIP archive (PKWARE APPNOTE 6.3, 4.3); the work is done beside other requests. */
export async function packZip(parts: readonly PlainPart[]): Promise<Buffer> {
  const locals: Buffer[] = [];
  const entries: Buffer[] = [];
  let at = 0;
  for (const { name, content } of parts) {
    const plain = Buffer.from(content, 'utf8');
    const packed = await deflated(plain);
    const path = Buffer.from(name, 'utf8');
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(VERSION, 0);
    facts.writeUInt16LE(UTF8_NAMES, 2);
    facts.writeUInt16LE(DEFLATED, 4);
    facts.writeUInt16LE(DAY_ONE, 8);
    facts.writeUInt32LE(crc32(plain), 10);
    facts.writeUInt32LE(packed.length, 14);
    facts.writeUInt32LE(plain.length, 18);
    facts.writeUInt16LE(path.length, 22);
    locals.push(marked(0x04034b50), facts, path, packed);
    const where = Buffer.alloc(14);
    where.writeUInt32LE(at, 10);
    entries.push(marked(0x02014b50), Buffer.from([VERSION, 0]), facts, where, path);
    at += 4 + facts.length + path.length + packed.length;
  }
  const list = Buffer.concat(entries);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(parts.length, 4);
  end.writeUInt16LE(parts.length, 6);
  end.writeUInt32LE(list.length, 8);
  end.writeUInt32LE(at, 12);
  return Buffer.concat([...locals, list, marked(0x06054b50), end]);
}

function marked(signature: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(signature);
  return bytes;
}
