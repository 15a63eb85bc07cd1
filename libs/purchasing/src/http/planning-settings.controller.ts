import { Body, Controller, Get, Param, Post, Put } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { OneOffDesk } from '../app/one-off-desk.js';
import { PlanningSettingsDesk } from '../app/planning-settings-desk.js';
import {
  ConsumablePlanningAnswerDto,
  ConsumablePlanningDto,
  NewOneOffDto,
  OneOffDto,
  OneOffListDto,
  PlanningSettingsDto,
} from './planning-settings.dto.js';

@ApiTags('reorder')
@Controller('reorder')
export class PlanningSettingsController {
  constructor(
    private readonly desk: PlanningSettingsDesk,
    private readonly oneOffs: OneOffDesk,
  ) {}

  @Get('settings')
  @Needs('alerts.read')
  @ApiOperation({ operationId: 'getPlanningSettings', summary: 'How the practice plans orders' })
  @ApiOkResponse({ type: PlanningSettingsDto })
  async get(@CurrentActor() actor: Actor): Promise<PlanningSettingsDto> {
    return this.desk.get(actor);
  }

  @Put('settings')
  @Needs('ordering.manage')
  @ApiOperation({
    operationId: 'setPlanningSettings',
    summary: 'Set how the practice plans orders',
  })
  @ApiOkResponse({ type: PlanningSettingsDto })
  async set(
    @CurrentActor() actor: Actor,
    @Body() body: PlanningSettingsDto,
  ): Promise<PlanningSettingsDto> {
    return this.desk.set(actor, body);
  }

  @Get('settings/consumables/:id')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'getConsumablePlanning',
    summary: 'What a consumable has of its own, and what holds for it',
  })
  @ApiOkResponse({ type: ConsumablePlanningAnswerDto })
  async getConsumable(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<ConsumablePlanningAnswerDto> {
    return this.desk.getConsumable(actor, id);
  }

  @Put('settings/consumables/:id')
  @Needs('ordering.manage')
  @ApiOperation({
    operationId: 'setConsumablePlanning',
    summary: 'Set what a consumable has of its own; what is left out is as the practice has it',
  })
  @ApiOkResponse({ type: ConsumablePlanningAnswerDto })
  async setConsumable(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: ConsumablePlanningDto,
  ): Promise<ConsumablePlanningAnswerDto> {
    return this.desk.setConsumable(actor, id, body);
  }

  @Get('one-offs')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'listOneOffs',
    summary: 'Days whose use says nothing about the days to come',
  })
  @ApiOkResponse({ type: OneOffListDto })
  async list(@CurrentActor() actor: Actor): Promise<OneOffListDto> {
    return this.oneOffs.list(actor);
  }

  @Post('one-offs')
  @Needs('ordering.manage')
  @ApiBooking()
  @ApiOperation({ operationId: 'markOneOff', summary: 'Mark the use of some days as a one-off' })
  @ApiCreatedResponse({ type: OneOffDto })
  async mark(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewOneOffDto,
  ): Promise<OneOffDto> {
    return (await this.oneOffs.mark(actor, key, body)).body;
  }

  @Post('one-offs/:id/withdrawal')
  @Needs('ordering.manage')
  @ApiBooking()
  @ApiOperation({
    operationId: 'withdrawOneOff',
    summary: 'Take a mark back: the use counts again',
  })
  @ApiCreatedResponse({ type: OneOffDto })
  async withdraw(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
  ): Promise<OneOffDto> {
    return (await this.oneOffs.withdraw(actor, key, id)).body;
  }
}
