import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { ReadLabel } from '../app/read-label.js';
import { LabelReadingDto, ReadLabelDto } from './label.dto.js';

@ApiTags('labels')
@Controller('labels')
export class LabelsController {
  constructor(private readonly readLabel: ReadLabel) {}

  @Post('read')
  @HttpCode(200)
  @Needs('stock.read')
  @ApiOperation({
    operationId: 'readLabel',
    summary: 'Read a scanned label and look up its presentation and lot',
  })
  @ApiOkResponse({ type: LabelReadingDto })
  async read(@CurrentActor() actor: Actor, @Body() body: ReadLabelDto): Promise<LabelReadingDto> {
    return this.readLabel.run(actor, body.text);
  }
}
