import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { ListAlerts } from '../queries/list-alerts.js';
import { AlertListDto, AlertQueryDto } from './alerts.dto.js';

@ApiTags('reorder')
@Controller('reorder')
export class AlertsController {
  constructor(private readonly listAlerts: ListAlerts) {}

  @Get('alerts')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'listAlerts',
    summary: 'Every reason to act today, the most urgent first, with the figures behind it',
  })
  @ApiOkResponse({ type: AlertListDto })
  async list(@CurrentActor() actor: Actor, @Query() query: AlertQueryDto): Promise<AlertListDto> {
    return this.listAlerts.run(actor, query);
  }
}
