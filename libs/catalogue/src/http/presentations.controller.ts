import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { ChangePresentation } from '../app/change-presentation.js';
import { CreatePresentation } from '../app/create-presentation.js';
import { GetPresentation } from '../app/get-presentation.js';
import { ListPresentations, type PresentationQuery } from '../app/list-presentations.js';
import { ListQueryDto, listQuery } from './list-query.dto.js';
import {
  NewPresentationDto,
  PresentationChangesDto,
  PresentationDto,
  PresentationPageDto,
  PresentationQueryDto,
} from './presentation.dto.js';

@ApiTags('catalogue')
@Controller()
export class PresentationsController {
  constructor(
    private readonly listPresentations: ListPresentations,
    private readonly getPresentation: GetPresentation,
    private readonly createPresentation: CreatePresentation,
    private readonly changePresentation: ChangePresentation,
  ) {}

  @Get('presentations')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'listPresentations', summary: 'Presentations, by name' })
  @ApiOkResponse({ type: PresentationPageDto })
  async list(
    @CurrentActor() actor: Actor,
    @Query() query: PresentationQueryDto,
  ): Promise<PresentationPageDto> {
    return this.listPresentations.run(actor, presentationQuery(query));
  }

  @Get('consumables/:id/presentations')
  @Needs('catalogue.read')
  @ApiOperation({
    operationId: 'listPresentationsOfConsumable',
    summary: 'How one consumable is bought',
  })
  @ApiOkResponse({ type: PresentationPageDto })
  async listOfConsumable(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Query() query: ListQueryDto,
  ): Promise<PresentationPageDto> {
    return this.listPresentations.run(actor, listQuery(query), id);
  }

  @Get('presentations/:id')
  @Needs('catalogue.read')
  @ApiOperation({ operationId: 'getPresentation', summary: 'One presentation' })
  @ApiOkResponse({ type: PresentationDto })
  async get(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<PresentationDto> {
    return this.getPresentation.run(actor, id);
  }

  @Post('presentations')
  @Needs('catalogue.write')
  @ApiOperation({ operationId: 'createPresentation', summary: 'Enter how a consumable is bought' })
  @ApiCreatedResponse({ type: PresentationDto })
  async create(
    @CurrentActor() actor: Actor,
    @Body() body: NewPresentationDto,
  ): Promise<PresentationDto> {
    return this.createPresentation.run(actor, body);
  }

  @Patch('presentations/:id')
  @Needs('catalogue.write')
  @ApiOperation({
    operationId: 'changePresentation',
    summary: 'Change the given fields of a presentation',
  })
  @ApiOkResponse({ type: PresentationDto })
  async change(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: PresentationChangesDto,
  ): Promise<PresentationDto> {
    return this.changePresentation.run(actor, id, body);
  }
}

function presentationQuery(query: PresentationQueryDto): PresentationQuery {
  const { consumableId, supplierId, deviceIdentifier } = query;
  return { ...listQuery(query), consumableId, supplierId, deviceIdentifier };
}
