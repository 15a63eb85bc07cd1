/** What the list of orders can be narrowed to. */
export const STATE_FILTERS = ['open', 'draft', 'approved', 'sent', 'closed', 'cancelled'] as const;

/** What the address of an order may open. */
export const ORDER_DIALOGS = [
  'approve',
  'withdraw',
  'send',
  'chase',
  'answer',
  'close',
  'cancel',
] as const;

export type OrderDialog = (typeof ORDER_DIALOGS)[number];
