import { answerOf, api, type Shape } from '../../../api/client.js';

interface Invoice extends Shape<'InvoiceDto'> {
  readonly deliveryId: string;
}

export const invoiceDelivery = ({ deliveryId, ...body }: Invoice, key: string) => {
  const params = { path: { id: deliveryId }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/deliveries/{id}/invoice', { params, body }));
};
