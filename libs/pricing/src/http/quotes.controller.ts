import { Body, Controller, HttpCode, Post, Query, StreamableFile } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { MakeQuote } from '../app/make-quote.js';
import { PrintEstimate } from '../app/print-estimate.js';
import { printEstimate } from './estimate-pdf.js';
import { EstimateQueryDto, EstimateQuestionDto, QuoteQuestionDto } from './quote.dto.js';
import { QuoteDto } from './quote-answer.dto.js';

@ApiTags('quotes')
@Controller('quotes')
export class QuotesController {
  constructor(
    private readonly makeQuote: MakeQuote,
    private readonly estimate: PrintEstimate,
  ) {}

  @Post()
  @HttpCode(200)
  @Needs('pricing.read')
  @ApiOperation({
    operationId: 'makeQuote',
    summary: 'The same work done in different ways, side by side; nothing is written',
    description:
      'The reason of each restoration decides what a plan pays; cosmetic work stays by itself. ' +
      "Figures are planning aids: local law and the plan's terms decide.",
  })
  @ApiOkResponse({ type: QuoteDto })
  async quote(@CurrentActor() actor: Actor, @Body() body: QuoteQuestionDto): Promise<QuoteDto> {
    return this.makeQuote.run(actor, body);
  }

  @Post('estimate.pdf')
  @HttpCode(200)
  @Needs('pricing.read')
  @ApiOperation({
    operationId: 'printEstimate',
    summary: 'One way of a quote as an estimate for the patient, in English or German',
  })
  @ApiProduces('application/pdf')
  @ApiOkResponse({ schema: { type: 'string', format: 'binary' }, description: 'A PDF.' })
  async print(
    @CurrentActor() actor: Actor,
    @Query() query: EstimateQueryDto,
    @Body() body: EstimateQuestionDto,
  ): Promise<StreamableFile> {
    const content = await this.estimate.run(actor, body, query.language ?? 'en');
    const options = { type: 'application/pdf', disposition: 'inline; filename="estimate.pdf"' };
    return new StreamableFile(await printEstimate(content), options);
  }
}
