import { Body, Controller, Get, Param, Put } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import { type Actor, IdPipe } from '#lib/platform';
import { PresentationParts } from '../app/presentation-parts.js';
import { PresentationPartsDto, PresentationPartsInputDto } from './presentation-parts.dto.js';

@ApiTags('catalogue')
@Controller('presentations')
export class PresentationPartsController {
  constructor(private readonly parts: PresentationParts) {}

  @Get(':id/parts')
  @Needs('catalogue.read')
  @ApiOperation({
    operationId: 'getPresentationParts',
    summary: 'What else is in a pack: the parts of a kit or of a mixed box',
  })
  @ApiOkResponse({ type: PresentationPartsDto })
  async get(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
  ): Promise<PresentationPartsDto> {
    return this.parts.get(actor, id);
  }

  @Put(':id/parts')
  @Needs('catalogue.write')
  @ApiOperation({
    operationId: 'setPresentationParts',
    summary: 'Set what else is in a pack; what was received before stays as it was received',
  })
  @ApiOkResponse({ type: PresentationPartsDto })
  async set(
    @CurrentActor() actor: Actor,
    @Param('id', IdPipe) id: string,
    @Body() body: PresentationPartsInputDto,
  ): Promise<PresentationPartsDto> {
    return this.parts.set(actor, id, body.parts);
  }
}
