import { answerOf, api, type Shape } from '../../../../api/client.js';

export type PlanLeft = Shape<'PlanLeftDto'>;

/** Who would pay what, by the terms of the plans; nothing is written. */
export function previewCharges(body: Shape<'NewChargesDto'>): Promise<Shape<'ChargesPreviewDto'>> {
  return answerOf(api.POST('/api/charges/preview', { body }));
}
