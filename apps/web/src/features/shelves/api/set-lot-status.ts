import { answerOf, api, type Shape } from '../../../api/client.js';

interface LotStatus extends Shape<'LotStatusDto'> {
  readonly id: string;
}

/** Sets what a lot is; doing it twice changes nothing, so it needs no key. */
export const setLotStatus = ({ id, ...body }: LotStatus) =>
  answerOf(api.PUT('/api/lots/{id}/status', { params: { path: { id } }, body }));
