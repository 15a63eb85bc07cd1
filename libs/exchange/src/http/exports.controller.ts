import { Controller, Get, Param, Query, StreamableFile } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ChoiceField, refuse } from '#lib/platform';
import { type AskedFile, ExportFiles } from '../app/export-files.js';
import { LANGUAGES, type Language } from '../domain/column.js';
import { IMPORT_KINDS, KINDS } from '../domain/kinds.js';

class ListFileQueryDto {
  @ChoiceField(LANGUAGES, { optional: true, description: 'Of the headings; en when left out.' })
  language?: Language;
}

const MEDIA = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
} as const;

const FORMATS = ['csv', 'xlsx'] as const;
const FILES = [...IMPORT_KINDS].flatMap((kind) =>
  FORMATS.flatMap((format) => (kind === 'book' && format === 'csv' ? [] : [`${kind}.${format}`])),
);

const PARAM = ApiParam({ name: 'file', enum: FILES, description: 'book.xlsx has all lists.' });
const BINARY = ApiOkResponse({
  description: 'The file.',
  content: Object.fromEntries(
    Object.values(MEDIA).map((type) => [type, { schema: { type: 'string', format: 'binary' } }]),
  ),
});

@ApiTags('files')
@Controller('exports')
export class ExportsController {
  constructor(private readonly files: ExportFiles) {}

  @Get(':file')
  @Needs('files.import')
  @PARAM
  @BINARY
  @ApiOperation({
    operationId: 'exportFile',
    summary: 'What the book has of a kind, or all of it, as a file that can be brought in again',
  })
  async book(
    @CurrentActor() actor: Actor,
    @Param('file') file: string,
    @Query() query: ListFileQueryDto,
  ): Promise<StreamableFile> {
    const asked = askedFile(file, query);
    return fileOf(await this.files.run(actor, asked), asked, `traybook-${asked.kind}`);
  }

  @Get('empty/:file')
  @Needs('files.import')
  @PARAM
  @BINARY
  @ApiOperation({
    operationId: 'exportEmptyFile',
    summary: 'An empty list to fill in, with its headings and an example that is not read',
  })
  async empty(
    @Param('file') file: string,
    @Query() query: ListFileQueryDto,
  ): Promise<StreamableFile> {
    const asked = askedFile(file, query);
    return fileOf(await this.files.template(asked), asked, `empty-${asked.kind}`);
  }
}

function askedFile(file: string, query: ListFileQueryDto): AskedFile {
  const known = FILES.includes(file);
  const [name, form] = file.split('.');
  const kind = [...KINDS, 'book' as const].find((each) => each === name);
  const format = FORMATS.find((each) => each === form);
  if (!known || !kind || !format) {
    throw refuse('not_found', `There is no such file. There are: ${FILES.join(', ')}.`);
  }
  return { kind, format, language: query.language ?? 'en' };
}

function fileOf(bytes: Buffer, { format }: AskedFile, name: string): StreamableFile {
  return new StreamableFile(bytes, {
    type: MEDIA[format],
    disposition: `attachment; filename="${name}.${format}"`,
    length: bytes.length,
  });
}
