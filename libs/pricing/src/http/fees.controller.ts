import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { listQuery } from '#lib/catalogue';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { AddFeeVersion } from '../app/add-fee-version.js';
import { ChangeFee } from '../app/change-fee.js';
import { CreateFee } from '../app/create-fee.js';
import { GetFee } from '../app/get-fee.js';
import { ListFees } from '../app/list-fees.js';
import {
  FeeChangesDto,
  FeeHistoryDto,
  FeeListQueryDto,
  FeePageDto,
  NewFeeDto,
  NewFeeVersionDto,
} from './fee.dto.js';

@ApiTags('fees and plans')
@Controller('fees')
export class FeesController {
  constructor(
    private readonly listFees: ListFees,
    private readonly getFee: GetFee,
    private readonly createFee: CreateFee,
    private readonly changeFee: ChangeFee,
    private readonly addVersion: AddFeeVersion,
  ) {}

  @Get()
  @Needs('pricing.read')
  @ApiOperation({ operationId: 'listFees', summary: "The practice's own fees, by name" })
  @ApiOkResponse({ type: FeePageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: FeeListQueryDto): Promise<FeePageDto> {
    return this.listFees.run(actor, listQuery(query), query.on);
  }

  @Get(':id')
  @Needs('pricing.read')
  @ApiOperation({ operationId: 'getFee', summary: 'One fee with all its versions' })
  @ApiOkResponse({ type: FeeHistoryDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<FeeHistoryDto> {
    return this.getFee.run(actor, id);
  }

  @Post()
  @Needs('pricing.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'createFee',
    summary: 'Enter a fee: as an amount, or by points, value of a point and factor',
  })
  @ApiCreatedResponse({ type: FeeHistoryDto })
  async create(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewFeeDto,
  ): Promise<FeeHistoryDto> {
    return this.createFee.run(actor, key, body);
  }

  @Patch(':id')
  @Needs('pricing.write')
  @ApiOperation({ operationId: 'changeFee', summary: 'Rename, link or retire a fee' })
  @ApiOkResponse({ type: FeeHistoryDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: FeeChangesDto,
  ): Promise<FeeHistoryDto> {
    return this.changeFee.run(actor, id, body);
  }

  @Post(':id/versions')
  @Needs('pricing.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'addFeeVersion',
    summary: 'What a fee comes to from a day on; earlier versions stay',
  })
  @ApiCreatedResponse({ type: FeeHistoryDto })
  async version(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: NewFeeVersionDto,
  ): Promise<FeeHistoryDto> {
    return this.addVersion.run(actor, key, id, body);
  }
}
