import { Body, Controller, Get, Put } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { OrderRulesDesk } from '../../app/orders/order-rules-desk.js';
import { OrderRulesAnswerDto, OrderRulesDto } from './order-rules.dto.js';

@ApiTags('orders')
@Controller('order-rules')
export class OrderRulesController {
  constructor(private readonly desk: OrderRulesDesk) {}

  @Get()
  @Needs('practice.manage')
  @ApiOperation({ operationId: 'getOrderRules', summary: 'Budget and limits of orders' })
  @ApiOkResponse({ type: OrderRulesAnswerDto })
  async get(@CurrentActor() actor: Actor): Promise<OrderRulesAnswerDto> {
    return this.desk.get(actor);
  }

  @Put()
  @Needs('practice.manage')
  @ApiOperation({ operationId: 'setOrderRules', summary: 'Set budget and limits of orders' })
  @ApiOkResponse({ type: OrderRulesAnswerDto })
  async set(
    @CurrentActor() actor: Actor,
    @Body() body: OrderRulesDto,
  ): Promise<OrderRulesAnswerDto> {
    return this.desk.set(actor, body);
  }
}
