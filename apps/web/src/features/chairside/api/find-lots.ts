import { answerOf, api, type Shape } from '../../../api/client.js';

export type Lot = Shape<'LotSummaryDto'>;

/** Lots with this very number; numbers repeat between products. */
export async function findLots(number: string): Promise<readonly Lot[]> {
  const query = { number, limit: 20 };
  return (await answerOf(api.GET('/api/lots', { params: { query } }))).items;
}
