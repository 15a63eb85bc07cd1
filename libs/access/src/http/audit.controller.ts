import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { type Actor, pageLimit } from '#lib/platform';
import { ListAuditEntries } from '../app/list-audit-entries.js';
import { AuditEntriesDto, AuditQuery } from './audit.dto.js';
import { CurrentActor, Needs } from './decorators.js';

@ApiTags('audit')
@Controller('audit-entries')
export class AuditController {
  constructor(private readonly listAuditEntries: ListAuditEntries) {}

  @Get()
  @Needs('audit.read')
  @ApiOperation({
    operationId: 'listAuditEntries',
    summary: 'Who changed what, and who signed in, latest first',
  })
  @ApiOkResponse({ type: AuditEntriesDto })
  async list(@CurrentActor() actor: Actor, @Query() query: AuditQuery): Promise<AuditEntriesDto> {
    const { cursor, subjectKind, subjectId, personId } = query;
    return this.listAuditEntries.run(actor, {
      limit: pageLimit(query),
      cursor,
      subjectKind,
      subjectId,
      personId,
    });
  }
}
