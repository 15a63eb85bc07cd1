import { Body, Controller, Get, Param, Post, Put, Query, StreamableFile } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiOkResponse,
  ApiOperation,
  ApiProduces,
  ApiTags,
} from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { ChangeOrder } from '../../app/orders/change-order.js';
import { CreateOrder } from '../../app/orders/create-order.js';
import { type OrderFile, OrderPapers } from '../../app/orders/order-papers.js';
import { GetOrder } from '../../queries/orders/get-order.js';
import { ListOrders } from '../../queries/orders/list-orders.js';
import { OrderDto, OrderPageDto } from './order-answers.dto.js';
import { NewOrderDto, OrderChangesDto, OrderQueryDto } from './orders.dto.js';

@ApiTags('orders')
@Controller('orders')
export class OrdersController {
  constructor(
    private readonly listOrders: ListOrders,
    private readonly getOrder: GetOrder,
    private readonly createOrder: CreateOrder,
    private readonly changeOrder: ChangeOrder,
    private readonly papers: OrderPapers,
  ) {}

  @Get()
  @Needs('orders.read')
  @ApiOperation({ operationId: 'listOrders', summary: 'Orders, the latest first' })
  @ApiOkResponse({ type: OrderPageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: OrderQueryDto): Promise<OrderPageDto> {
    return this.listOrders.run(actor, query);
  }

  @Get(':id.pdf')
  @Needs('orders.read')
  @ApiOperation({
    operationId: 'printOrder',
    summary: 'An order on paper, as its supplier gets it',
  })
  @ApiProduces('application/pdf')
  @ApiOkResponse({ schema: { type: 'string', format: 'binary' }, description: 'A PDF.' })
  async pdf(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<StreamableFile> {
    return streamed(await this.papers.run(actor, id, 'pdf'));
  }

  @Get(':id.csv')
  @Needs('orders.read')
  @ApiOperation({ operationId: 'exportOrder', summary: 'The lines of an order as a table' })
  @ApiProduces('text/csv')
  @ApiOkResponse({ schema: { type: 'string' }, description: 'A CSV (RFC 4180) in UTF-8.' })
  async csv(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<StreamableFile> {
    return streamed(await this.papers.run(actor, id, 'csv'));
  }

  @Get(':id')
  @Needs('orders.read')
  @ApiOperation({
    operationId: 'getOrder',
    summary: 'An order: its lines, why they were proposed, what came of them, what happened',
  })
  @ApiOkResponse({ type: OrderDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<OrderDto> {
    return this.getOrder.run(actor, id);
  }

  @Post()
  @Needs('orders.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'createOrder',
    summary: 'Begin an order to a supplier, by hand or from what is proposed today',
  })
  @ApiCreatedResponse({ type: OrderDto })
  async create(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewOrderDto,
  ): Promise<OrderDto> {
    return (await this.createOrder.run(actor, key, body)).body;
  }

  @Put(':id')
  @Needs('orders.write')
  @ApiOperation({
    operationId: 'changeOrder',
    summary: 'Write a draft anew; changing an approved order takes its approval back',
  })
  @ApiOkResponse({ type: OrderDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderChangesDto,
  ): Promise<OrderDto> {
    return this.changeOrder.run(actor, id, body);
  }
}

function streamed({ filename, contentType, content }: OrderFile): StreamableFile {
  const disposition = `inline; filename="${filename}"`;
  return new StreamableFile(content, { type: contentType, disposition });
}
