import { Body, Controller, Param, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { CountStock } from '../app/count-stock.js';
import { MoveStock } from '../app/move-stock.js';
import { OpenContainer } from '../app/open-container.js';
import { ReverseMovement } from '../app/reverse-movement.js';
import { ReturnStock, WriteOffStock } from '../app/take-out.js';
import {
  BookedDto,
  CountDto,
  CountStockDto,
  MoveStockDto,
  OpenContainerDto,
  ReturnStockDto,
  ReversalDto,
  WriteOffDto,
} from './stock.dto.js';

@ApiTags('stock')
@Controller()
export class StockController {
  constructor(
    private readonly moveStock: MoveStock,
    private readonly openContainer: OpenContainer,
    private readonly writeOffStock: WriteOffStock,
    private readonly returnStock: ReturnStock,
    private readonly reverseMovement: ReverseMovement,
  ) {}

  @Post('stock/moves')
  @Needs('stock.handle')
  @ApiBooking()
  @ApiOperation({ operationId: 'moveStock', summary: 'Carry goods to another location' })
  @ApiCreatedResponse({ type: BookedDto })
  async move(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: MoveStockDto,
  ): Promise<BookedDto> {
    return (await this.moveStock.run(actor, key, body)).body;
  }

  @Post('stock/openings')
  @Needs('stock.handle')
  @ApiBooking()
  @ApiOperation({ operationId: 'openContainer', summary: 'Open a sealed container' })
  @ApiCreatedResponse({ type: BookedDto })
  async open(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: OpenContainerDto,
  ): Promise<BookedDto> {
    return (await this.openContainer.run(actor, key, body)).body;
  }

  @Post('stock/write-offs')
  @Needs('stock.handle')
  @ApiBooking()
  @ApiOperation({ operationId: 'writeOffStock', summary: 'Throw goods away for a stated reason' })
  @ApiCreatedResponse({ type: BookedDto })
  async writeOff(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: WriteOffDto,
  ): Promise<BookedDto> {
    return (await this.writeOffStock.run(actor, key, body)).body;
  }

  @Post('stock/returns')
  @Needs('deliveries.book')
  @ApiBooking()
  @ApiOperation({ operationId: 'returnStock', summary: 'Send goods back to the supplier' })
  @ApiCreatedResponse({ type: BookedDto })
  async returnGoods(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: ReturnStockDto,
  ): Promise<BookedDto> {
    return (await this.returnStock.run(actor, key, body)).body;
  }

  @Post('movements/:id/reversal')
  @Needs('stock.handle')
  @ApiBooking()
  @ApiOperation({
    operationId: 'reverseMovement',
    summary: 'Undo a write-off, return, move, opening or count difference',
  })
  @ApiCreatedResponse({ type: BookedDto })
  async reverse(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: ReversalDto,
  ): Promise<BookedDto> {
    return (await this.reverseMovement.run(actor, key, id, body)).body;
  }
}

@ApiTags('stock')
@Controller('counts')
export class CountsController {
  constructor(private readonly countStock: CountStock) {}

  @Post()
  @Needs('stock.handle')
  @ApiBooking()
  @ApiOperation({
    operationId: 'countStock',
    summary: 'Book what was really there; differences become movements',
  })
  @ApiCreatedResponse({ type: CountDto })
  async count(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: CountStockDto,
  ): Promise<CountDto> {
    return (await this.countStock.run(actor, key, body)).body;
  }
}
