import {
  CAVITY_CLASSES,
  CAVITY_SIZES,
  formatSurfaces,
  formatTooth,
  parseIsoTooth,
  parseSurfaces,
  REASONS,
  type ToothNotation,
} from '#lib/dentition';
import { longId, shortId } from './compact-id.js';
import { readRare, writeRare } from './rare-words.js';
import { MOST_ROWS, newRow, placeOf, type Row } from './row.js';

const SIZES = CAVITY_SIZES.map((size) => size.charAt(0));

/**
 * The restorations as they stand in the address: '11.MI.d.4m.<template>.250p50.45.<shade>*…', the
 * tooth in the notation of ISO 3950. What is seldom said follows class and size ('4mnx1'), where an
 * older address says nothing. An id that was written before is written as its number.
 */
export function writeRows(rows: readonly Row[], notation: ToothNotation): string {
  const ids: string[] = [];
  const idOf = (id: string) => {
    const at = ids.indexOf(id);
    if (at >= 0) return String(at);
    ids.push(id);
    return shortId(id);
  };
  return rows
    .flatMap((row) => {
      const { tooth, surfaces } = placeOf(row, notation);
      if (tooth === undefined || surfaces === undefined || row.templateId === '') return [];
      const cls = row.cavityClass === '' ? 0 : CAVITY_CLASSES.indexOf(row.cavityClass) + 1;
      const words = [
        tooth,
        formatSurfaces(surfaces),
        row.reason.charAt(0),
        `${cls}${row.size.charAt(0)}${writeRare(row)}`,
        idOf(row.templateId),
        row.fee.trim().replace(',', '.').replace('.', 'p'),
        row.minutes.trim(),
        ...row.shades.map(idOf),
      ];
      return words.join('.');
    })
    .join('*');
}

/** What can be read of it; a restoration that cannot be is left out. */
export function readRows(text: string | undefined, notation: ToothNotation): Row[] {
  const ids: string[] = [];
  const idOf = (word: string | undefined) => {
    if (word === undefined) return undefined;
    if (/^\d{1,2}$/.test(word)) return ids[Number(word)];
    const id = longId(word);
    if (id !== undefined) ids.push(id);
    return id;
  };
  return (text ?? '')
    .split('*')
    .slice(0, MOST_ROWS)
    .flatMap((words) => readRow(words, notation, idOf) ?? []);
}

function readRow(
  text: string,
  notation: ToothNotation,
  idOf: (word: string | undefined) => string | undefined,
): Row | undefined {
  const [
    toothWord,
    letters = '',
    reasonWord,
    kind = '',
    template,
    fee = '',
    minutes = '',
    ...shades
  ] = text.split('.');
  const tooth = parseIsoTooth(toothWord ?? '');
  const templateId = idOf(template);
  const chosen = shades.flatMap((shade) => idOf(shade) ?? []);
  const reason = REASONS.find((each) => each.charAt(0) === reasonWord);
  if (tooth === undefined || templateId === undefined || reason === undefined) return undefined;
  const read = parseSurfaces(tooth, letters);
  if (!read.ok) return undefined;
  return newRow({
    tooth: formatTooth(tooth, notation),
    surfaces: formatSurfaces(read.surfaces),
    reason,
    templateId,
    cavityClass: CAVITY_CLASSES[Number(kind.charAt(0)) - 1] ?? '',
    classChosen: true,
    size: CAVITY_SIZES[SIZES.indexOf(kind.charAt(1))] ?? 'medium',
    fee: /^\d{1,9}(p\d{1,3})?$/.test(fee) ? fee.replace('p', '.') : '',
    minutes: /^\d{1,4}$/.test(minutes) ? minutes : '',
    shades: chosen,
    ...readRare(kind.slice(2)),
  });
}
