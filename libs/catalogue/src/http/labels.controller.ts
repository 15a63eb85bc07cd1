import { Body, Controller, HttpCode, Post, Query, StreamableFile } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { PrintLabels } from '../app/print-labels.js';
import { ReadLabel } from '../app/read-label.js';
import { LabelReadingDto, ReadLabelDto } from './label.dto.js';
import { LabelSheetDto, LabelSheetQueryDto } from './label-sheet.dto.js';
import { printLabelSheet } from './label-sheet.js';

@ApiTags('labels')
@Controller('labels')
export class LabelsController {
  constructor(
    private readonly readLabel: ReadLabel,
    private readonly printLabels: PrintLabels,
  ) {}

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

  @Post('sheet.pdf')
  @HttpCode(200)
  @Needs('stock.read')
  @ApiOperation({
    operationId: 'printLabelSheet',
    summary: 'Labels of places, lots and opened containers on A4 sheets of 24 (70 x 37 mm)',
    description:
      'Each has a GS1 DataMatrix that POST /api/labels/read reads back. (91) is for this practice ' +
      'only (company internal information); (01), (17) and (10) stand before it on a pack with a ' +
      'GTIN. The use-by date of an opened container is printed, and found again by (91).',
  })
  @ApiProduces('application/pdf')
  @ApiOkResponse({ schema: { type: 'string', format: 'binary' }, description: 'A PDF.' })
  async print(
    @CurrentActor() actor: Actor,
    @Query() query: LabelSheetQueryDto,
    @Body() body: LabelSheetDto,
  ): Promise<StreamableFile> {
    const { labels, printedAt } = await this.printLabels.run(actor, body);
    const sheet = await printLabelSheet({
      ...{ practiceName: actor.practiceName, labels, printedAt },
      ...{ start: body.start ?? 1, language: query.language ?? 'en' },
    });
    const options = { type: 'application/pdf', disposition: 'inline; filename="labels.pdf"' };
    return new StreamableFile(sheet, options);
  }
}
