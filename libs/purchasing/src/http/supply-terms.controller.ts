import { Body, Controller, Get, Param, Post, Put } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { SubstituteDesk } from '../app/substitute-desk.js';
import { SupplyTermsDesk } from '../app/supply-terms-desk.js';
import { NewSubstituteDto, SubstitutePairDto, SubstitutePairListDto } from './substitutes.dto.js';
import {
  PresentationTermsAnswerDto,
  PresentationTermsDto,
  SupplyTermsAnswerDto,
  SupplyTermsDto,
} from './supply-terms.dto.js';

@ApiTags('reorder')
@Controller('reorder')
export class SupplyTermsController {
  constructor(
    private readonly desk: SupplyTermsDesk,
    private readonly substitutes: SubstituteDesk,
  ) {}

  @Get('settings/suppliers/:id')
  @Needs('alerts.read')
  @ApiOperation({ operationId: 'getSupplyTerms', summary: 'What a supplier asks for' })
  @ApiOkResponse({ type: SupplyTermsAnswerDto })
  async getSupplier(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<SupplyTermsAnswerDto> {
    return this.desk.getSupplier(actor, id);
  }

  @Put('settings/suppliers/:id')
  @Needs('ordering.manage')
  @ApiOperation({ operationId: 'setSupplyTerms', summary: 'Set what a supplier asks for' })
  @ApiOkResponse({ type: SupplyTermsAnswerDto })
  async setSupplier(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: SupplyTermsDto,
  ): Promise<SupplyTermsAnswerDto> {
    return this.desk.setSupplier(actor, id, body);
  }

  @Get('settings/presentations/:id')
  @Needs('alerts.read')
  @ApiOperation({
    operationId: 'getPresentationTerms',
    summary: 'How a presentation is sold: its smallest order and its price list',
  })
  @ApiOkResponse({ type: PresentationTermsAnswerDto })
  async getPresentation(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<PresentationTermsAnswerDto> {
    return this.desk.getPresentation(actor, id);
  }

  @Put('settings/presentations/:id')
  @Needs('ordering.manage')
  @ApiOperation({
    operationId: 'setPresentationTerms',
    summary: 'Set how a presentation is sold; replaces what was said before',
  })
  @ApiOkResponse({ type: PresentationTermsAnswerDto })
  async setPresentation(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: PresentationTermsDto,
  ): Promise<PresentationTermsAnswerDto> {
    return this.desk.setPresentation(actor, id, body);
  }

  @Get('substitutes')
  @Needs('alerts.read')
  @ApiOperation({ operationId: 'listSubstitutes', summary: 'What may stand in for what' })
  @ApiOkResponse({ type: SubstitutePairListDto })
  async list(@CurrentActor() actor: Actor): Promise<SubstitutePairListDto> {
    return this.substitutes.list(actor);
  }

  @Post('substitutes')
  @Needs('ordering.manage')
  @ApiBooking()
  @ApiOperation({
    operationId: 'addSubstitute',
    summary: 'Say that one consumable may stand in for another; it is offered, never taken',
  })
  @ApiCreatedResponse({ type: SubstitutePairDto })
  async add(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewSubstituteDto,
  ): Promise<SubstitutePairDto> {
    return (await this.substitutes.add(actor, key, body)).body;
  }

  @Post('substitutes/:id/withdrawal')
  @Needs('ordering.manage')
  @ApiBooking()
  @ApiOperation({
    operationId: 'withdrawSubstitute',
    summary: 'Take a pair back: it is not offered any more',
  })
  @ApiCreatedResponse({ type: SubstitutePairDto })
  async withdraw(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
  ): Promise<SubstitutePairDto> {
    return (await this.substitutes.withdraw(actor, key, id)).body;
  }
}
