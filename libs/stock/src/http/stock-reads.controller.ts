import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { LayerReader } from '../queries/layer-reader.js';
import { ListDeliveries } from '../queries/list-deliveries.js';
import { ListShortfalls } from '../queries/list-shortfalls.js';
import { ListStock } from '../queries/list-stock.js';
import { MovementReader } from '../queries/movement-reader.js';
import { SummariseStock } from '../queries/summarise-stock.js';
import { MovementDto, MovementPageDto } from './movement.dto.js';
import {
  LayerDto,
  ShortfallPageDto,
  StockPageDto,
  StockSummaryPageDto,
} from './stock-answers.dto.js';
import {
  DeliveryQueryDto,
  MovementQueryDto,
  ShortfallQueryDto,
  StockQueryDto,
  StockSummaryQueryDto,
} from './stock-queries.dto.js';
import { DeliveryDto, DeliveryPageDto } from './stock-reads.dto.js';

@ApiTags('stock')
@Controller()
export class StockReadsController {
  constructor(
    private readonly listStock: ListStock,
    private readonly summariseStock: SummariseStock,
    private readonly movementReader: MovementReader,
    private readonly layerReader: LayerReader,
    private readonly listShortfalls: ListShortfalls,
  ) {}

  @Get('stock')
  @Needs('stock.read')
  @ApiOperation({
    operationId: 'listStock',
    summary: 'What is on the shelves: where, which lot, how much, how long, worth what',
  })
  @ApiOkResponse({ type: StockPageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: StockQueryDto): Promise<StockPageDto> {
    return this.listStock.run(actor, query);
  }

  @Get('stock/summary')
  @Needs('stock.read')
  @ApiOperation({ operationId: 'summariseStock', summary: 'One line per consumable' })
  @ApiOkResponse({ type: StockSummaryPageDto })
  async summary(
    @CurrentActor() actor: Actor,
    @Query() query: StockSummaryQueryDto,
  ): Promise<StockSummaryPageDto> {
    return this.summariseStock.run(actor, query);
  }

  @Get('movements')
  @Needs('stock.read')
  @ApiOperation({ operationId: 'listMovements', summary: 'The ledger, newest entry first' })
  @ApiOkResponse({ type: MovementPageDto })
  async movements(
    @CurrentActor() actor: Actor,
    @Query() query: MovementQueryDto,
  ): Promise<MovementPageDto> {
    return this.movementReader.list(actor, query);
  }

  @Get('movements/:id')
  @Needs('stock.read')
  @ApiOperation({ operationId: 'getMovement', summary: 'One entry of the ledger' })
  @ApiOkResponse({ type: MovementDto })
  async movement(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<MovementDto> {
    return this.movementReader.get(actor, id);
  }

  @Get('layers/:id')
  @Needs('stock.read')
  @ApiOperation({
    operationId: 'getLayer',
    summary: 'One delivery line as stock, with its balance of quantity and of cost',
  })
  @ApiOkResponse({ type: LayerDto })
  async layer(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<LayerDto> {
    return this.layerReader.get(actor, id);
  }

  @Get('shortfalls')
  @Needs('stock.read')
  @ApiOperation({
    operationId: 'listShortfalls',
    summary: 'What visits used that the book had no stock for, oldest first',
  })
  @ApiOkResponse({ type: ShortfallPageDto })
  async shortfalls(
    @CurrentActor() actor: Actor,
    @Query() query: ShortfallQueryDto,
  ): Promise<ShortfallPageDto> {
    return this.listShortfalls.run(actor, query);
  }
}

@ApiTags('deliveries')
@Controller('deliveries')
export class DeliveryReadsController {
  constructor(private readonly listDeliveries: ListDeliveries) {}

  @Get()
  @Needs('deliveries.read')
  @ApiOperation({ operationId: 'listDeliveries', summary: 'Deliveries, the latest first' })
  @ApiOkResponse({ type: DeliveryPageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: DeliveryQueryDto,
  ): Promise<DeliveryPageDto> {
    return this.listDeliveries.run(actor, query);
  }

  @Get(':id')
  @Needs('deliveries.read')
  @ApiOperation({
    operationId: 'getDelivery',
    summary: 'A delivery with its lines, their layers, landed costs and what remains',
  })
  @ApiOkResponse({ type: DeliveryDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<DeliveryDto> {
    return this.listDeliveries.get(actor, id);
  }
}
