import { defineRefusals } from '#lib/platform';

export const refusePurchasing = defineRefusals({
  alert_not_open: { status: 409, title: 'Nothing is open under this id' },
  cannot_wait: { status: 422, title: 'This cannot wait' },
  day_does_not_fit: { status: 422, title: 'The day does not fit' },
  pair_stands: { status: 409, title: 'It was entered before' },
  already_withdrawn: { status: 409, title: 'It was taken back before' },
  no_mail_server: { status: 422, title: 'No mail server is set' },
  history_too_short: { status: 422, title: 'There is not enough history yet' },
  replay_running: { status: 409, title: 'A replay is running' },
  no_usual_price: { status: 422, title: 'Nobody knows the usual price' },
  address_not_allowed: { status: 422, title: 'Messages cannot go to this address' },
  mail_not_taken: { status: 422, title: 'The mail was not taken' },
  order_not_so_far: { status: 409, title: 'The order is not in a state for this' },
  order_changed_meanwhile: { status: 409, title: 'Somebody changed the order meanwhile' },
  order_does_not_fit: { status: 422, title: 'The order does not fit' },
  above_limits: { status: 422, title: 'The order is above what may be approved' },
});
