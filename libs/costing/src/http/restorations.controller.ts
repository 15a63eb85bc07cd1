import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { ExplainRestorationCost } from '../queries/explain-restoration-cost.js';
import { ListRestorations } from '../queries/list-restorations.js';
import { RestorationQueryDto } from './costing-queries.dto.js';
import { RestorationExplainedDto, RestorationPageDto } from './restoration.dto.js';

@ApiTags('restorations')
@Controller('restorations')
export class RestorationsController {
  constructor(
    private readonly listRestorations: ListRestorations,
    private readonly explainCost: ExplainRestorationCost,
  ) {}

  @Get()
  @Needs('costs.read')
  @ApiOperation({ operationId: 'listRestorations', summary: 'Restorations and what each cost' })
  @ApiOkResponse({ type: RestorationPageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: RestorationQueryDto,
  ): Promise<RestorationPageDto> {
    return this.listRestorations.run(actor, query);
  }

  @Get(':id/cost')
  @Needs('costs.read')
  @ApiOperation({
    operationId: 'explainRestorationCost',
    summary: 'Where the cost comes from: lines, movements, lots, deliveries and prices paid',
  })
  @ApiOkResponse({ type: RestorationExplainedDto })
  async explain(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<RestorationExplainedDto> {
    return this.explainCost.run(actor, id);
  }
}
