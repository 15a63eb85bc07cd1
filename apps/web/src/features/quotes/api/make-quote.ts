import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Quote = Shape<'QuoteDto'>;
export type Way = Quote['ways'][number];
export type QuotedLine = Way['lines'][number];

/** The ways of doing the work; writes nothing, so it may be asked as often as one likes. */
export const quoteQuery = (body: Shape<'QuoteQuestionDto'>) =>
  queryOptions({
    queryKey: ['quotes', body],
    queryFn: ({ signal }): Promise<Quote> => answerOf(api.POST('/api/quotes', { body, signal })),
    staleTime: 30_000,
    retry: false,
  });
