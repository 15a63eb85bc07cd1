import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from '@jest/globals';
import bwip from 'bwip-js/node';
import { prepareZXingModule, type ReadResult, readBarcodes } from 'zxing-wasm/reader';
import { prepareZXingModule as prepareWriter, writeBarcode } from 'zxing-wasm/writer';
import { type Label, ownSubject, readLabel } from '#lib/labels';
import type { OwnLabel } from '../db/label-own.js';
import { LABELS_PER_SHEET, labelPlace } from './label-grid.js';
import { printLabelSheet, symbolOf } from './label-sheet.js';

const ID = '0192e4a0-7c1d-7f00-8a00-00000000000b';
const OTHER = 'ffffffff-ffff-4fff-bfff-ffffffffffff';
const GTIN = '09521234543213'; // the General Specifications' own example prefix 952

const location: OwnLabel = {
  ...{ kind: 'location', locationId: ID, locationName: 'Drawer 3 – Łódź', holdingId: null },
  ...{ presentationId: null, presentationName: null, containersPerPack: null },
  ...{ deviceIdentifier: null, consumableId: null, consumableName: null, variant: null },
  ...{ stockUnit: null, lotId: null, lotNumber: null, lotStatus: null, expiresOn: null },
  ...{ openedOn: null, useBy: null },
};

const lot: OwnLabel = {
  ...location,
  ...{ kind: 'lot', locationName: 'Store', presentationName: 'Syringe', containersPerPack: 1 },
  ...{ deviceIdentifier: '9521234543213', consumableName: 'Paste', variant: 'Body 2' },
  ...{ stockUnit: 'g', lotId: OTHER, lotNumber: 'P-7(a)', lotStatus: 'released' },
  ...{ expiresOn: '2027-06-30' },
};

const container: OwnLabel = {
  ...lot,
  ...{ kind: 'container', holdingId: ID, openedOn: '2026-05-04', useBy: '2026-08-04' },
};

beforeAll(async () => {
  const wasm = (part: string) =>
    readFileSync(fileURLToPath(import.meta.resolve(`zxing-wasm/${part}/zxing_${part}.wasm`)));
  prepareZXingModule({ overrides: { wasmBinary: wasm('reader').buffer as ArrayBuffer } });
  prepareWriter({ overrides: { wasmBinary: wasm('writer').buffer as ArrayBuffer } });
});

function labelOf({ text, symbologyIdentifier, contentType }: ReadResult): Label {
  // Whoever writes a character set (ECI) into GS1 data makes ]d2 another identifier.
  const identifier = contentType === 'GS1' ? symbologyIdentifier.replace(/^]d\d/, ']d2') : '';
  const read = readLabel(identifier + text, { currentYear: 2026 });
  if (!read.ok) throw new Error(read.problem.message);
  return read.label;
}

type Picture = Exclude<Parameters<typeof readBarcodes>[0], Blob | ArrayBuffer | Uint8Array>;

const look = (image: Picture | Uint8Array) =>
  readBarcodes(image, { formats: ['DataMatrix', 'QRCode', 'Code128'], textMode: 'Plain' });

const DOTS = 6; // per point: 432 per inch

/** Paints the rectangles of a page as a printer would, and nothing else of it. */
function painted(pdf: Buffer, page: number): Picture {
  const streams = [...pdf.toString('latin1').matchAll(/stream\n([\s\S]*?)\nendstream/g)]
    .map(([, content = '']) => content)
    .filter((content) => / re\n/.test(content));
  const [width, height] = [Math.ceil(595.276 * DOTS), Math.ceil(841.89 * DOTS)];
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const [, ...numbers] of (streams[page] ?? '').matchAll(
    /([\d.-]+) ([\d.-]+) ([\d.-]+) ([\d.-]+) re\n/g,
  )) {
    const [x = 0, y = 0, w = 0, h = 0] = numbers.map((each) => Number(each) * DOTS);
    for (let row = Math.round(y); row < Math.round(y + h); row += 1) {
      for (let column = Math.round(x); column < Math.round(x + w); column += 1) {
        data.fill(0, (row * width + column) * 4, (row * width + column) * 4 + 3);
      }
    }
  }
  return { data, width, height, colorSpace: 'srgb' };
}

async function sheetOf(labels: readonly OwnLabel[], start = 1): Promise<Buffer> {
  return printLabelSheet({
    ...{ practiceName: 'Mill Lane', labels, start, language: 'en', compress: false },
    printedAt: new Date('2026-05-04T10:00:00Z'),
  });
}

describe('a printed sheet', () => {
  it('is read back from the page: what each label stands on, lot and expiry', async () => {
    const found = await look(painted(await sheetOf([location, lot, container], 5), 0));
    const labels = found.map(labelOf);
    const subjects = labels.map(ownSubject);
    expect(subjects).toHaveLength(3);
    expect(subjects).toEqual(
      expect.arrayContaining([
        { kind: 'location', id: ID },
        { kind: 'lot', id: OTHER },
        { kind: 'container', id: ID },
      ]),
    );
    for (const label of labels.filter((one) => ownSubject(one)?.kind !== 'location')) {
      const says = { gtin14: GTIN, lot: 'P-7(a)', expiry: '2027-06-30', carrier: 'DataMatrix' };
      expect(label).toMatchObject(says);
    }
    for (const { position, symbologyIdentifier } of found) {
      expect(symbologyIdentifier).toBe(']d2');
      // The fifth place is the middle of the second row; the seventh begins the third.
      const { top, height } = labelPlace(2, 5);
      expect(position.topLeft.y / DOTS).toBeGreaterThan(labelPlace(0, 5).top);
      expect(position.bottomLeft.y / DOTS).toBeLessThan(top + height);
    }
  });

  it('goes on to the next page behind the last place', async () => {
    const pdf = await sheetOf([location, lot], LABELS_PER_SHEET);
    const [first, second] = [await look(painted(pdf, 0)), await look(painted(pdf, 1))];
    expect(first.map(labelOf).map(ownSubject)).toEqual([{ kind: 'location', id: ID }]);
    expect(second.map(labelOf).map(ownSubject)).toEqual([{ kind: 'lot', id: OTHER }]);
  });

  it("does not put a pack's number on one container of several", () => {
    const one = symbolOf({ ...container, containersPerPack: 20 });
    expect(one.bracketed).toMatch(/^\(91\)3\d{39}$/);
    expect(symbolOf({ ...lot, containersPerPack: 20 }).bracketed).toContain(`(01)${GTIN}`);
    expect(symbolOf({ ...lot, deviceIdentifier: 'A99912345' }).bracketed).toMatch(/^\(91\)2/);
  });
});

describe('symbols that one library writes', () => {
  const bracketed = '(01)09521234543213(17)270630(10)P-7(21)S1';
  const says = { gtin14: GTIN, lot: 'P-7', expiry: '2027-06-30', serial: 'S1' };

  it.each([
    ['gs1datamatrix', ']d2'],
    ['gs1qrcode', ']Q3'],
    ['gs1-128', ']C1'],
  ])('another reads: %s', async (bcid, identifier) => {
    const picture = { bcid, text: bracketed, scale: 3, padding: 12, backgroundcolor: 'FFFFFF' };
    const [found] = await look(new Uint8Array(await bwip.toBuffer(picture)));
    if (!found) throw new Error('Nothing was read');
    expect(found.symbologyIdentifier).toBe(identifier);
    expect(labelOf(found)).toMatchObject(says);
  });

  it('another reads a HIBC label and a GS1 Digital Link', async () => {
    for (const [bcid, text, expected] of [
      ['hibcdatamatrix', 'A99912345/$$52001510X3', { standard: 'HIBC', lot: '10X3' }],
      ['qrcode', 'https://id.gs1.org/01/09521234543213/10/P-7?17=270630', { lot: 'P-7' }],
      ['code128', '9521234543213', { gtin14: GTIN }],
    ] as const) {
      const picture = { bcid, text, scale: 3, padding: 12, backgroundcolor: 'FFFFFF' };
      const [found] = await look(new Uint8Array(await bwip.toBuffer(picture)));
      if (!found) throw new Error(`Nothing was read of ${bcid}`);
      expect(labelOf(found)).toMatchObject(expected);
    }
  });

  it('also when our element strings are written by the other', async () => {
    const { bracketed: ours } = symbolOf({ ...lot, lotNumber: 'P-7' });
    const { image } = await writeBarcode(ours, {
      ...{ format: 'DataMatrix', options: 'gs1', scale: 4, addQuietZones: true },
    });
    if (!image) throw new Error('Nothing was written');
    const [found] = await look(new Uint8Array(await image.arrayBuffer()));
    if (!found) throw new Error('Nothing was read');
    expect(labelOf(found)).toMatchObject({ gtin14: GTIN, lot: 'P-7', expiry: '2027-06-30' });
    expect(ownSubject(labelOf(found))).toEqual({ kind: 'lot', id: OTHER });
  });
});
