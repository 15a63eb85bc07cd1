import { Injectable } from '@nestjs/common';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import type { QuoteQuestionDto } from '../http/quote.dto.js';
import type { QuoteDto } from '../http/quote-answer.dto.js';
import { quoteView } from './quote-view.js';
import { workOutQuote } from './work-out-quote.js';

/** The same work done in different ways, side by side. Nothing is written. */
@Injectable()
export class MakeQuote {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, body: QuoteQuestionDto): Promise<QuoteDto> {
    const today = this.clock.today(actor.timeZone);
    return this.uow.read(actor.practiceId, async (tx) =>
      quoteView(await workOutQuote(tx, actor, body, today), actor, body),
    );
  }
}
