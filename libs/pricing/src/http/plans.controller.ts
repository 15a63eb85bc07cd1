import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { ListQueryDto, listQuery } from '#lib/catalogue';
import { type Actor, ApiBooking, IdempotencyKey, IdPipe } from '#lib/platform';
import { AddPlanTerms } from '../app/add-plan-terms.js';
import { ChangePlan } from '../app/change-plan.js';
import { CreatePlan } from '../app/create-plan.js';
import { GetPlan } from '../app/get-plan.js';
import { ListPlans } from '../app/list-plans.js';
import { NewPlanDto, NewPlanTermDto, PlanChangesDto, PlanDto, PlanPageDto } from './plan.dto.js';

@ApiTags('fees and plans')
@Controller('fee-plans')
export class PlansController {
  constructor(
    private readonly listPlans: ListPlans,
    private readonly getPlan: GetPlan,
    private readonly createPlan: CreatePlan,
    private readonly changePlan: ChangePlan,
    private readonly addTerms: AddPlanTerms,
  ) {}

  @Get()
  @Needs('pricing.read')
  @ApiOperation({ operationId: 'listPlans', summary: 'The plans that patients have, by name' })
  @ApiOkResponse({ type: PlanPageDto })
  async list(@CurrentActor() actor: Actor, @Query() query: ListQueryDto): Promise<PlanPageDto> {
    return this.listPlans.run(actor, listQuery(query));
  }

  @Get(':id')
  @Needs('pricing.read')
  @ApiOperation({ operationId: 'getPlan', summary: 'One plan with all its terms' })
  @ApiOkResponse({ type: PlanDto })
  async get(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<PlanDto> {
    return this.getPlan.run(actor, id);
  }

  @Post()
  @Needs('pricing.write')
  @ApiBooking()
  @ApiOperation({ operationId: 'createPlan', summary: 'Enter a plan' })
  @ApiCreatedResponse({ type: PlanDto })
  async create(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Body() body: NewPlanDto,
  ): Promise<PlanDto> {
    return this.createPlan.run(actor, key, body);
  }

  @Patch(':id')
  @Needs('pricing.write')
  @ApiOperation({ operationId: 'changePlan', summary: 'Change the given fields of a plan' })
  @ApiOkResponse({ type: PlanDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: PlanChangesDto,
  ): Promise<PlanDto> {
    return this.changePlan.run(actor, id, body);
  }

  @Post(':id/terms')
  @Needs('pricing.write')
  @ApiBooking()
  @ApiOperation({
    operationId: 'addPlanTerms',
    summary: 'What a plan says about a fee or a class from a day on; earlier terms stay',
  })
  @ApiCreatedResponse({ type: PlanDto })
  async terms(
    @CurrentActor() actor: Actor,
    @IdempotencyKey() key: string,
    @Param('id', IdPipe) id: string,
    @Body() body: NewPlanTermDto,
  ): Promise<PlanDto> {
    return this.addTerms.run(actor, key, id, body);
  }
}
