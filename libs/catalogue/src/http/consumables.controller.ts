import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { ChangeConsumable } from '../app/change-consumable.js';
import { CreateConsumable } from '../app/create-consumable.js';
import { GetConsumable } from '../app/get-consumable.js';
import { ListConsumables } from '../app/list-consumables.js';
import {
  ConsumableChangesDto,
  ConsumableDto,
  ConsumablePageDto,
  ConsumableQueryDto,
  NewConsumableDto,
} from './consumable.dto.js';
import { listQuery } from './list-query.dto.js';

@ApiTags('catalogue')
@Controller()
export class ConsumablesController {
  constructor(
    private readonly listConsumables: ListConsumables,
    private readonly getConsumable: GetConsumable,
    private readonly createConsumable: CreateConsumable,
    private readonly changeConsumable: ChangeConsumable,
  ) {}

  @Get('consumables')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'listConsumables', summary: 'Consumables, by name' })
  @ApiOkResponse({ type: ConsumablePageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: ConsumableQueryDto,
  ): Promise<ConsumablePageDto> {
    return this.listConsumables.run(actor, {
      ...listQuery(query),
      category: query.category,
      shade: query.shade,
    });
  }

  @Get('consumables/:id')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'getConsumable', summary: 'One consumable' })
  @ApiOkResponse({ type: ConsumableDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<ConsumableDto> {
    return this.getConsumable.run(actor, id);
  }

  @Post('consumables')
  @Needs('catalogue.write')
  @ApiOperation({ operationId: 'createConsumable', summary: 'Enter a consumable' })
  @ApiCreatedResponse({ type: ConsumableDto })
  async create(
    @CurrentActor() actor: Actor,
    @Body() body: NewConsumableDto,
  ): Promise<ConsumableDto> {
    return this.createConsumable.run(actor, body);
  }

  @Patch('consumables/:id')
  @Needs('catalogue.write')
  @ApiOperation({
    operationId: 'changeConsumable',
    summary: 'Change the given fields of a consumable',
  })
  @ApiOkResponse({ type: ConsumableDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: ConsumableChangesDto,
  ): Promise<ConsumableDto> {
    return this.changeConsumable.run(actor, id, body);
  }
}
