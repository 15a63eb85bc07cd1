import { deflateRawSync } from 'node:zlib';

interface Part {
  readonly name: string;
  readonly content: Buffer | string;
  /** What the list of contents says of its size, when it lies. */
  readonly saidBytes?: number;
}

/** A ZIP archive by hand, so that it may lie about itself (PKWARE APPNOTE 6.3, 4.3). */
export function zip(parts: readonly Part[]): Buffer {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  let at = 0;
  for (const { name, content, saidBytes } of parts) {
    const plain = Buffer.isBuffer(content) ? content : Buffer.from(content);
    const packed = deflateRawSync(plain, { level: 9 });
    const path = Buffer.from(name);
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(8, 8);
    local.writeUInt16LE(path.length, 26);
    const entry = Buffer.alloc(46);
    entry.writeUInt32LE(0x02014b50, 0);
    entry.writeUInt16LE(8, 10);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(saidBytes ?? plain.length, 24);
    entry.writeUInt16LE(path.length, 28);
    entry.writeUInt32LE(at, 42);
    locals.push(local, path, packed);
    central.push(entry, path);
    at += 30 + path.length + packed.length;
  }
  const list = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...locals, list, end]);
}

const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** The smallest workbook with one sheet (ECMA-376 part 1), whose XML is given. */
export function workbook(sheetXml: string | Buffer, saidBytes?: number): Buffer {
  return zip([
    {
      name: 'xl/workbook.xml',
      content: `<workbook xmlns:r="${RELATIONS}"><sheets><sheet name="Sheet1" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    },
    {
      name: 'xl/_rels/workbook.xml.rels',
      content:
        '<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>',
    },
    {
      name: 'xl/worksheets/sheet1.xml',
      content: sheetXml,
      ...(saidBytes === undefined ? {} : { saidBytes }),
    },
  ]);
}

/** Rows of text cells as the XML of a sheet, with whatever else it should hold. */
export function sheetXml(rows: readonly (readonly string[])[], more = ''): string {
  const xml = rows.map((cells, i) => {
    const inner = cells.map((cell) =>
      cell.startsWith('<') ? cell : `<c t="inlineStr"><is><t>${cell}</t></is></c>`,
    );
    return `<row r="${i + 1}">${inner.join('')}</row>`;
  });
  return `<worksheet><sheetData>${xml.join('')}</sheetData>${more}</worksheet>`;
}
