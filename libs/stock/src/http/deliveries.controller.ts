import { Body, Controller, HttpCode, Param, ParseIntPipe, Post, Put } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { CheckDelivery } from '../app/check-delivery.js';
import { CorrectLine } from '../app/correct-line.js';
import { InvoiceDelivery } from '../app/invoice-delivery.js';
import { ReceiveDelivery } from '../app/receive-delivery.js';
import { ReverseDelivery } from '../app/reverse-delivery.js';
import { SetKitLotStatus } from '../app/set-kit-lot-status.js';
import { SetLotStatus } from '../app/set-lot-status.js';
import { ReceiveDeliveryDto } from './delivery.dto.js';
import {
  CorrectedDeliveryDto,
  CorrectLineDto,
  InvoiceDto,
  InvoicedDeliveryDto,
} from './delivery-changes.dto.js';
import { DeliveryCheckDto } from './delivery-check.dto.js';
import {
  KitLotStatusAnswerDto,
  LotStatusAnswerDto,
  LotStatusDto,
  ReversalDto,
} from './stock.dto.js';
import { DeliveryDto, ReceivedDeliveryDto } from './stock-reads.dto.js';

@ApiTags('deliveries')
@Controller('deliveries')
export class DeliveriesController {
  constructor(
    private readonly checkDelivery: CheckDelivery,
    private readonly receiveDelivery: ReceiveDelivery,
    private readonly reverseDelivery: ReverseDelivery,
    private readonly correctLine: CorrectLine,
    private readonly invoiceDelivery: InvoiceDelivery,
  ) {}

  @Post('check')
  @HttpCode(200)
  @Needs('deliveries.book')
  @ApiOperation({
    operationId: 'checkDelivery',
    summary: 'What a delivery would come to and what to know about it; books nothing',
  })
  @ApiOkResponse({ type: DeliveryCheckDto })
  async check(
    @CurrentActor() actor: Actor,
    @Body() body: ReceiveDeliveryDto,
  ): Promise<DeliveryCheckDto> {
    return this.checkDelivery.run(actor, body);
  }

  @Post()
  @Needs('deliveries.book')
  @ApiBooking()
  @ApiOperation({
    operationId: 'receiveDelivery',
    summary: 'Take a delivery into stock; each line becomes a layer at its landed cost',
  })
  @ApiCreatedResponse({ type: ReceivedDeliveryDto })
  async receive(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: ReceiveDeliveryDto,
  ): Promise<ReceivedDeliveryDto> {
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

  @Post(':id/lines/:lineNumber/correction')
  @Needs('deliveries.book')
  @ApiBooking()
  @ApiOperation({
    operationId: 'correctDeliveryLine',
    summary: 'Put one line right by counter-entries; a lot, an expiry or a price also after use',
  })
  @ApiCreatedResponse({ type: CorrectedDeliveryDto })
  async correct(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) deliveryId: string,
    @Param('lineNumber', ParseIntPipe) lineNumber: number,
    @Body() body: CorrectLineDto,
  ): Promise<CorrectedDeliveryDto> {
    return (await this.correctLine.run(actor, key, { deliveryId, lineNumber }, body)).body;
  }

  @Post(':id/invoice')
  @Needs('deliveries.book')
  @ApiBooking()
  @ApiOperation({
    operationId: 'invoiceDelivery',
    summary: 'Book an invoice that says other prices: stock is revalued, the rest is variance',
  })
  @ApiCreatedResponse({ type: InvoicedDeliveryDto })
  async invoice(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: InvoiceDto,
  ): Promise<InvoicedDeliveryDto> {
    return (await this.invoiceDelivery.run(actor, key, id, body)).body;
  }
}

@ApiTags('lots')
@Controller()
export class LotStatusController {
  constructor(
    private readonly setLotStatus: SetLotStatus,
    private readonly setKitLotStatus: SetKitLotStatus,
  ) {}

  @Put('kit-lots/:id/status')
  @Needs('lots.hold')
  @ApiOperation({
    operationId: 'setKitLotStatus',
    summary: 'Quarantine, recall or release a kit with the lots of all its parts',
  })
  @ApiOkResponse({ type: KitLotStatusAnswerDto })
  async setKit(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: LotStatusDto,
  ): Promise<KitLotStatusAnswerDto> {
    return this.setKitLotStatus.run(actor, id, body);
  }

  @Put('lots/:id/status')
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
