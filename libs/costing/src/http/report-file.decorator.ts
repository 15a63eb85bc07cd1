import { applyDecorators, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces } from '@nestjs/swagger';
import { Needs } from '#lib/access';
import { CSV_TEXT, type FileForm, PDF, PDF_FILE, XLSX, XLSX_FILE } from './report-files.js';

const FORMS = {
  csv: { mediaType: 'text/csv', answer: CSV_TEXT, summary: 'The same report for a spreadsheet' },
  xlsx: { mediaType: XLSX, answer: XLSX_FILE, summary: 'The same report as a workbook' },
  pdf: { mediaType: PDF, answer: PDF_FILE, summary: 'The same report for printing' },
} as const;

/** The route of a report's file: its path with an ending, e.g. waste.xlsx. */
export function ReportFile(report: string, form: FileForm): MethodDecorator {
  const { mediaType, answer, summary } = FORMS[form];
  const name = report.replace(/(^|-)(\w)/g, (_match, _dash, letter: string) =>
    letter.toUpperCase(),
  );
  const ending = form.charAt(0).toUpperCase() + form.slice(1);
  return applyDecorators(
    Get(`${report}.${form}`),
    Needs('costs.read'),
    ApiOperation({ operationId: `report${name}${ending}`, summary }),
    ApiProduces(mediaType),
    ApiOkResponse(answer),
  );
}
