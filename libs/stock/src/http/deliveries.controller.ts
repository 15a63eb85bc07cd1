import { Body, Controller, Param, Post, Put } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { ReceiveDelivery } from '../app/receive-delivery.js';
import { ReverseDelivery } from '../app/reverse-delivery.js';
import { SetLotStatus } from '../app/set-lot-status.js';
import { LotStatusAnswerDto, LotStatusDto, ReceiveDeliveryDto, ReversalDto } from './stock.dto.js';
import { DeliveryDto } from './stock-reads.dto.js';

@ApiTags('deliveries')
@Controller('deliveries')
export class DeliveriesController {
  constructor(
    private readonly receiveDelivery: ReceiveDelivery,
    private readonly reverseDelivery: ReverseDelivery,
  ) {}

  @Post()
  @Needs('deliveries.book')
  @ApiBooking()
  @ApiOperation({
    operationId: 'receiveDelivery',
    summary: 'Take a delivery into stock; each line becomes a layer at its landed cost',
  })
  @ApiCreatedResponse({ type: DeliveryDto })
  async receive(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: ReceiveDeliveryDto,
  ): Promise<DeliveryDto> {
    return (await this.receiveDelivery.run(actor, key, body)).body;
  }

  @Post(':id/reversal')
  @Needs('deliveries.book')
  @ApiBooking()
  @ApiOperation({
    operationId: 'reverseDelivery',
    summary: 'Undo a delivery that was booked wrongly, while all of it is still there',
  })
  @ApiCreatedResponse({ type: DeliveryDto })
  async reverse(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: ReversalDto,
  ): Promise<DeliveryDto> {
    return (await this.reverseDelivery.run(actor, key, id, body)).body;
  }
}

@ApiTags('lots')
@Controller('lots')
export class LotStatusController {
  constructor(private readonly setLotStatus: SetLotStatus) {}

  @Put(':id/status')
  @Needs('lots.hold')
  @ApiOperation({
    operationId: 'setLotStatus',
    summary: 'Quarantine, recall or release a lot in every location at once',
  })
  @ApiOkResponse({ type: LotStatusAnswerDto })
  async set(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: LotStatusDto,
  ): Promise<LotStatusAnswerDto> {
    return this.setLotStatus.run(actor, id, body);
  }
}
