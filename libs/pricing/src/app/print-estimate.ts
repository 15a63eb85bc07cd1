import { Injectable } from '@nestjs/common';
import { type Actor, Clock, refuse, UnitOfWork } from '#lib/platform';
import type { Estimate } from '../http/estimate-pdf.js';
import type { EstimateQuestionDto, Language } from '../http/quote.dto.js';
import { refusePricing } from '../pricing.refusals.js';
import { quoteView } from './quote-view.js';
import { workOutQuote } from './work-out-quote.js';

/** One way of a quote as a patient takes it home. Nothing is written. */
@Injectable()
export class PrintEstimate {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, body: EstimateQuestionDto, language: Language): Promise<Estimate> {
    if (!body.chartReference) {
      throw refuse('invalid_request', 'An estimate is for somebody: state the chart reference.', [
        { field: 'chartReference', message: 'must be stated' },
      ]);
    }
    const today = this.clock.today(actor.timeZone);
    const quote = await this.uow.read(actor.practiceId, async (tx) =>
      quoteView(await workOutQuote(tx, actor, body, today), actor, body),
    );
    const wanted = body.way ?? 'all in one visit';
    const way = quote.ways.find((each) => each.way === wanted);
    if (!way) {
      const detail = 'Only work of both kinds can be taken apart.';
      throw refusePricing('way_not_open', detail, [
        { field: 'way', message: 'is not open to these restorations' },
      ]);
    }
    const { practiceName } = actor;
    return { practiceName, quote, way, language, printedAt: this.clock.now() };
  }
}
