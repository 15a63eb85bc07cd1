import { columnLetters } from '../domain/sheet.js';
import { type PlainPart, packZip } from './zip-write.js';

/** How cells of a column are shown; each is a style of the workbook. */
const STYLES = { text: 1, date: 2, decimal: 3, whole: 4, heading: 5 } as const;
export type CellKind = Exclude<keyof typeof STYLES, 'heading'>;

export interface SheetToWrite {
  readonly name: string;
  /** Of each column, as many as there are. */
  readonly kinds: readonly CellKind[];
  /** In widths of a digit. */
  readonly widths: readonly number[];
  /** The first row is a heading that stays in sight; without it, all rows are plain. */
  readonly heading: boolean;
  readonly rows: readonly (readonly (string | null)[])[];
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPES = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MOST_DIGITS = 15; // what a number of a spreadsheet holds; more stays text

/**
 * A workbook (ECMA-376 part 1): text is always text, so that nothing in it becomes a formula, a date or
 * a rounded number. Written by hand because thirty thousand rows took a general library many seconds.
 */
export async function writeXlsx(sheets: readonly SheetToWrite[]): Promise<Buffer> {
  const numbers = sheets.map((_, i) => i + 1);
  const relation = (id: number, type: string, target: string) =>
    `<Relationship Id="rId${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const relations = (inner: string) =>
    `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${inner}</Relationships>`;
  const overrides = numbers.map(
    (n) =>
      `<Override PartName="/xl/worksheets/sheet${n}.xml" ContentType="${TYPES}.worksheet+xml"/>`,
  );
  const listed = sheets.map(
    ({ name }, i) => `<sheet name="${escaped(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`,
  );
  const parts: PlainPart[] = [
    {
      name: '[Content_Types].xml',
      content: `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPES}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${TYPES}.styles+xml"/>${overrides.join('')}</Types>`,
    },
    { name: '_rels/.rels', content: relations(relation(1, 'officeDocument', 'xl/workbook.xml')) },
    {
      name: 'xl/workbook.xml',
      content: `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${listed.join('')}</sheets></workbook>`,
    },
    {
      name: 'xl/_rels/workbook.xml.rels',
      content: relations(
        numbers.map((n) => relation(n, 'worksheet', `worksheets/sheet${n}.xml`)).join('') +
          relation(sheets.length + 1, 'styles', 'styles.xml'),
      ),
    },
    { name: 'xl/styles.xml', content: STYLES_XML },
    ...sheets.map((sheet, i) => ({
      name: `xl/worksheets/sheet${i + 1}.xml`,
      content: sheetXml(sheet),
    })),
  ];
  return packZip(parts);
}

const STYLES_XML =
  `${HEAD}<styleSheet xmlns="${MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/><numFmt numFmtId="165" formatCode="0.######"/></numFmts>` +
  '<fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts>' +
  '<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFEEE8DC"/></patternFill></fill></fills>' +
  '<borders count="2"><border/><border><left/><right/><top/><bottom style="thin"/></border></borders>' +
  '<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="6"><xf/>' +
  [49, 164, 165, 1].map((id) => `<xf numFmtId="${id}" applyNumberFormat="1"/>`).join('') +
  '<xf numFmtId="49" fontId="1" fillId="2" borderId="1" applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1"/></cellXfs></styleSheet>';

function sheetXml({ kinds, widths, heading, rows }: SheetToWrite): string {
  const columns = widths.map((width, i) => {
    const style = STYLES[kinds[i] ?? 'text'];
    return `<col min="${i + 1}" max="${i + 1}" width="${width}" style="${style}" customWidth="1"/>`;
  });
  const frozen = '<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>';
  const view = heading
    ? `<sheetViews><sheetView workbookViewId="0">${frozen}</sheetView></sheetViews>`
    : '';
  const lines = rows.map((row, i) => {
    const style = heading && i === 0 ? STYLES.heading : undefined;
    const cells = row.map((cell, at) =>
      cell === null || cell === ''
        ? ''
        : cellXml(cell, { ref: `${columnLetters(at)}${i + 1}`, kind: kinds[at] ?? 'text', style }),
    );
    return `<row r="${i + 1}">${cells.join('')}</row>`;
  });
  return `${HEAD}<worksheet xmlns="${MAIN}">${view}<cols>${columns.join('')}</cols><sheetData>${lines.join('')}</sheetData></worksheet>`;
}

interface CellPlace {
  readonly ref: string;
  readonly kind: CellKind;
  readonly style: number | undefined;
}

function cellXml(cell: string, { ref, kind, style }: CellPlace): string {
  if (style === undefined && kind === 'date') {
    return `<c r="${ref}" s="${STYLES.date}"><v>${serialOf(cell)}</v></c>`;
  }
  const numeric = kind === 'decimal' || kind === 'whole';
  if (style === undefined && numeric && cell.replace(/\D/g, '').length <= MOST_DIGITS) {
    return `<c r="${ref}" s="${STYLES[kind]}"><v>${cell}</v></c>`;
  }
  return `<c r="${ref}" s="${style ?? STYLES.text}" t="inlineStr"><is><t xml:space="preserve">${escaped(cell)}</t></is></c>`;
}

const DAY_MS = 86_400_000;

/** The number of a day in the calendar of spreadsheets, right from March 1900 on. */
function serialOf(day: string): number {
  return (Date.parse(`${day}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / DAY_MS;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (mark) => ENTITIES[mark] ?? mark);
}
