import { readCsv } from '../domain/csv.js';
import { decodeText } from '../domain/decode-text.js';
import { LIMITS, type RawFile, UnreadableFile } from '../domain/sheet.js';
import { readXlsx } from './xlsx-read.js';

const ZIP = [0x50, 0x4b];
const OLD_WORKBOOK = [0xd0, 0xcf, 0x11, 0xe0];

/**
 * Reads a CSV or XLSX file. Which it is, its first bytes say, not its name; the name only becomes the
 * name of a CSV's sheet. Throws UnreadableFile with a sentence for whoever sent it.
 */
export async function readFile(bytes: Buffer, name: string): Promise<RawFile> {
  if (bytes.length === 0) throw new UnreadableFile('The file is empty.');
  if (bytes.length > LIMITS.fileBytes) {
    throw new UnreadableFile(
      `The file is larger than ${LIMITS.fileBytes / 1_048_576} MB. Split it into several files.`,
    );
  }
  const begins = (mark: readonly number[]) => mark.every((byte, i) => bytes[i] === byte);
  if (begins(OLD_WORKBOOK)) {
    throw new UnreadableFile('This is a workbook of the old form (.xls). Save it as .xlsx.');
  }
  if (begins(ZIP)) return { format: 'xlsx', sheets: await readXlsx(bytes) };
  const sheet = readCsv(decodeText(bytes), name.replace(/\.[A-Za-z]{3,4}$/, '') || 'CSV');
  return { format: 'csv', sheets: [sheet] };
}
