import { Body, Controller, Param, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { ApproveOrder } from '../../app/orders/approve-order.js';
import { FollowOrder } from '../../app/orders/follow-order.js';
import { SendOrder } from '../../app/orders/send-order.js';
import { OrderDto } from './order-answers.dto.js';
import { OrderActDto, OrderChasingDto, OrderSendingDto, SupplierAnswerDto } from './orders.dto.js';

/** What is done with an order, each step with the version that whoever does it has seen. */
@ApiTags('orders')
@Controller('orders/:id')
export class OrderStepsController {
  constructor(
    private readonly approveOrder: ApproveOrder,
    private readonly sendOrder: SendOrder,
    private readonly followOrder: FollowOrder,
  ) {}

  @Post('approval')
  @Needs('orders.approve')
  @ApiBooking()
  @ApiOperation({ operationId: 'approveOrder', summary: 'Approve a draft within the limits' })
  @ApiCreatedResponse({ type: OrderDto })
  async approve(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderActDto,
  ): Promise<OrderDto> {
    return (await this.approveOrder.approve(actor, key, id, body)).body;
  }

  @Post('approval-withdrawal')
  @Needs('orders.approve')
  @ApiBooking()
  @ApiOperation({ operationId: 'withdrawOrderApproval', summary: 'Take an approval back' })
  @ApiCreatedResponse({ type: OrderDto })
  async withdraw(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderActDto,
  ): Promise<OrderDto> {
    return (await this.approveOrder.withdraw(actor, key, id, body)).body;
  }

  @Post('sending')
  @Needs('orders.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'sendOrder',
    summary: 'Send an approved order by e-mail, or note that it was sent otherwise',
    description: 'By e-mail it is sent only when the mail server took it.',
  })
  @ApiCreatedResponse({ type: OrderDto })
  async send(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderSendingDto,
  ): Promise<OrderDto> {
    return (await this.sendOrder.run(actor, key, id, body)).body;
  }

  @Post('chasing')
  @Needs('orders.write')
  @ApiBooking()
  @ApiOperation({ operationId: 'chaseOrder', summary: 'Ask the supplier for what is outstanding' })
  @ApiCreatedResponse({ type: OrderDto })
  async chase(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderChasingDto,
  ): Promise<OrderDto> {
    return (await this.followOrder.chase(actor, key, id, body)).body;
  }

  @Post('answer')
  @Needs('orders.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'answerOrder',
    summary: 'What the supplier said: another day, its number, what will not come',
  })
  @ApiCreatedResponse({ type: OrderDto })
  async answer(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: SupplierAnswerDto,
  ): Promise<OrderDto> {
    return (await this.followOrder.answer(actor, key, id, body)).body;
  }

  @Post('closing')
  @Needs('orders.write')
  @ApiBooking()
  @ApiOperation({ operationId: 'closeOrder', summary: 'Expect nothing more of an order' })
  @ApiCreatedResponse({ type: OrderDto })
  async close(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderActDto,
  ): Promise<OrderDto> {
    return (await this.followOrder.close(actor, key, id, body)).body;
  }

  @Post('cancellation')
  @Needs('orders.write')
  @ApiBooking()
  @ApiOperation({ operationId: 'cancelOrder', summary: 'Drop an order that was not sent' })
  @ApiCreatedResponse({ type: OrderDto })
  async cancel(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: OrderActDto,
  ): Promise<OrderDto> {
    return (await this.followOrder.cancel(actor, key, id, body)).body;
  }
}
