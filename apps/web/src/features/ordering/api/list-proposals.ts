import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type ProposalList = Shape<'ProposalListDto'>;
export type Basket = Shape<'BasketDto'>;
export type Proposal = Shape<'ProposalDto'>;
export type Offer = Shape<'ProposalOfferDto'>;
export type Shaping = Shape<'ShapingDto'>;
export type Assumed = Shape<'AssumedDto'>;
export type Substitute = Shape<'SubstituteDto'>;
export type Outlook = Shape<'ShelfOutlookDto'>;
export type SupplierLead = Shape<'SupplierLeadDto'>;

/** What to order today, one order per supplier. */
export const proposalsQuery = queryOptions({
  queryKey: ['reorder', 'proposals'],
  queryFn: ({ signal }): Promise<ProposalList> =>
    answerOf(api.GET('/api/reorder/proposals', { signal })),
});
