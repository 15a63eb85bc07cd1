import { defineRefusals } from '#lib/platform';

export const refusePurchasing = defineRefusals({
  alert_not_open: { status: 409, title: 'Nothing is open under this id' },
  cannot_wait: { status: 422, title: 'This cannot wait' },
  day_does_not_fit: { status: 422, title: 'The day does not fit' },
  already_withdrawn: { status: 409, title: 'It was taken back before' },
  no_mail_server: { status: 422, title: 'No mail server is set' },
  address_not_allowed: { status: 422, title: 'Messages cannot go to this address' },
});
