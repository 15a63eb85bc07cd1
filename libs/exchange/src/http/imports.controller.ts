import { Controller, Get, HttpCode, Param, Post, Query } from '@nestjs/common';
import {
  ApiBody,
  ApiConsumes,
  ApiCreatedResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { ImportFile, type SentFile } from '../app/import-file.js';
import { ImportLog } from '../db/import-log.js';
import { KIND_FACTS, KINDS } from '../domain/kinds.js';
import { FileBody, readByHand } from './file-request.js';
import { FILE_ROUTES } from './file-routes.js';
import {
  CheckedImportDto,
  CheckImportQueryDto,
  ImportKindsDto,
  ImportRunDto,
  ImportRunsDto,
  RunImportQueryDto,
} from './imports.dto.js';

const FILE = { schema: { type: 'string', format: 'binary' } } as const;

@ApiTags('files')
@Controller('imports')
export class ImportsController {
  constructor(
    private readonly importFile: ImportFile,
    private readonly log: ImportLog,
  ) {}

  @Get('kinds')
  @Needs('files.import')
  @ApiOperation({
    operationId: 'listImportKinds',
    summary: 'Which lists can be brought in, and what columns they have',
  })
  @ApiOkResponse({ type: ImportKindsDto })
  kinds(): ImportKindsDto {
    return {
      items: KINDS.map((kind) => ({
        kind,
        columns: KIND_FACTS[kind].columns.map(({ key, heading, help, required }) => ({
          key,
          headingEn: heading.en,
          headingDe: heading.de,
          helpEn: help.en,
          helpDe: help.de,
          required: required ?? false,
        })),
      })),
    };
  }

  @Get()
  @Needs('files.import')
  @ApiOperation({ operationId: 'listImports', summary: 'The last files that were brought in' })
  @ApiOkResponse({ type: ImportRunsDto })
  latest(@CurrentActor() actor: Actor): Promise<ImportRunsDto> {
    return this.log.latest(actor);
  }

  @Get(':id')
  @Needs('files.import')
  @ApiOperation({ operationId: 'getImport', summary: 'How far an import is, and what came of it' })
  @ApiOkResponse({ type: ImportRunDto })
  get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<ImportRunDto> {
    return this.log.get(actor, id);
  }

  @Post('check')
  @HttpCode(200)
  @Needs(FILE_ROUTES.needs)
  @ApiConsumes('application/octet-stream')
  @ApiBody(FILE)
  @ApiOperation({
    operationId: 'checkImport',
    summary: 'What would become of each row of a file; nothing is kept',
  })
  @ApiOkResponse({ type: CheckedImportDto })
  check(
    @CurrentActor() actor: Actor,
    @Query() query: CheckImportQueryDto,
    @FileBody() bytes: Buffer,
  ): Promise<CheckedImportDto> {
    return this.importFile.check(actor, sentFile(query, bytes), Number(query.rows ?? '200'));
  }

  @Post()
  @Needs(FILE_ROUTES.needs)
  @ApiBooking()
  @ApiConsumes('application/octet-stream')
  @ApiBody(FILE)
  @ApiOperation({
    operationId: 'importFile',
    summary: 'Bring a file in: all of its rows or none',
  })
  @ApiCreatedResponse({ type: ImportRunDto })
  async run(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Query() query: RunImportQueryDto,
    @FileBody() bytes: Buffer,
  ): Promise<ImportRunDto> {
    const sent = { ...sentFile(query, bytes), id: query.id ?? undefined };
    return (await this.importFile.run(actor, key, sent)).body;
  }
}

function sentFile(query: RunImportQueryDto | CheckImportQueryDto, bytes: Buffer): SentFile {
  const { kind } = query;
  return {
    bytes,
    name: query.name?.trim() || `${kind}.csv`,
    options: {
      kind,
      byHand: readByHand(query.columns, kind),
      ignoreUnknown: query.ignoreUnknown === 'true',
    },
  };
}
