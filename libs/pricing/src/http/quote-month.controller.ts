import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CurrentActor, Needs } from '#lib/access';
import type { Actor } from '#lib/platform';
import { WorkOutMonth } from '../app/quote-month.js';
import { MonthOfWorkDto, MonthQuestionDto } from './quote-month.dto.js';

@ApiTags('quotes')
@Controller('quotes')
export class QuoteMonthController {
  constructor(private readonly workOutMonth: WorkOutMonth) {}

  @Post('break-even')
  @HttpCode(200)
  @Needs('pricing.read')
  @ApiOperation({
    operationId: 'workOutMonth',
    summary: 'How many restorations a month pay for the fixed cost; nothing is written',
    description:
      'Contribution, break-even of one kind or of a mix, margin of safety, and, where chair hours ' +
      'are short, which work earns most an hour. Figures are planning aids.',
  })
  @ApiOkResponse({ type: MonthOfWorkDto })
  month(@CurrentActor() actor: Actor, @Body() body: MonthQuestionDto): MonthOfWorkDto {
    return this.workOutMonth.run(actor, body);
  }
}
