import { answerOf, api, type Shape } from '../../../api/client.js';

export type LotStatus = Shape<'LotStatusDto'>['status'];

/** Holds or releases a kit with the lots of all its parts, also those that come later. */
export function setKitStatus(id: string, body: Shape<'LotStatusDto'>) {
  return answerOf(api.PUT('/api/kit-lots/{id}/status', { params: { path: { id } }, body }));
}

/** Holds or releases a lot; saying it twice changes nothing. */
export function setLotStatus(id: string, body: Shape<'LotStatusDto'>) {
  return answerOf(api.PUT('/api/lots/{id}/status', { params: { path: { id } }, body }));
}
