import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { GetForecast } from '../queries/get-forecast.js';
import { ListProposals } from '../queries/list-proposals.js';
import { PlannedItems } from '../queries/planned-items.js';
import { ForecastQueryDto, ItemForecastDto } from './forecast.dto.js';
import { PlannedItemAnswerDto, PlannedItemListDto } from './planned-items.dto.js';
import { ProposalListDto } from './proposals.dto.js';

@ApiTags('reorder')
@Controller('reorder')
export class PlanningController {
  constructor(
    private readonly getForecast: GetForecast,
    private readonly listProposals: ListProposals,
    private readonly plannedItems: PlannedItems,
  ) {}

  @Get('forecasts/:id')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'getForecast',
    summary: 'What was used of a consumable, and the whole range of what will be',
  })
  @ApiOkResponse({ type: ItemForecastDto })
  async forecast(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Query() query: ForecastQueryDto,
  ): Promise<ItemForecastDto> {
    return this.getForecast.run(actor, id, query.locationId ?? null);
  }

  @Get('proposals')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'listProposals',
    summary: 'What to order today, one order per supplier, with every number behind it',
  })
  @ApiOkResponse({ type: ProposalListDto })
  async list(@CurrentActor() actor: Actor): Promise<ProposalListDto> {
    return this.listProposals.run(actor);
  }

  @Get('items')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'listPlannedItems',
    summary: 'Where every consumable stands: use, position, reorder point, and what comes next',
  })
  @ApiOkResponse({ type: PlannedItemListDto })
  async items(@CurrentActor() actor: Actor): Promise<PlannedItemListDto> {
    return this.plannedItems.list(actor);
  }

  @Get('items/:id')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'getPlannedItem',
    summary: 'The ordering policy of one consumable, with every number behind it',
  })
  @ApiOkResponse({ type: PlannedItemAnswerDto })
  async item(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<PlannedItemAnswerDto> {
    return this.plannedItems.one(actor, id);
  }
}
