import { Body, Controller, Get, Put } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { BookedPlanningDesk } from '../app/booked-planning-desk.js';
import { BookedPlanningDto } from './booked-planning.dto.js';

@ApiTags('reorder')
@Controller('reorder/settings/booked-visits')
export class BookedPlanningController {
  constructor(private readonly desk: BookedPlanningDesk) {}

  @Get()
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'getBookedPlanning',
    summary: 'Whether the whole day of the practice is booked here',
  })
  @ApiOkResponse({ type: BookedPlanningDto })
  async get(@CurrentActor() actor: Actor): Promise<BookedPlanningDto> {
    return this.desk.get(actor);
  }

  @Put()
  @Needs('ordering.manage')
  @ApiOperation({
    operationId: 'setBookedPlanning',
    summary: 'Say whether the whole day of the practice is booked here',
  })
  @ApiOkResponse({ type: BookedPlanningDto })
  async set(
    @CurrentActor() actor: Actor,
    @Body() body: BookedPlanningDto,
  ): Promise<BookedPlanningDto> {
    return this.desk.set(actor, body);
  }
}
