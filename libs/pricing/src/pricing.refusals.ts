import { defineRefusals } from '#lib/platform';

export const refusePricing = defineRefusals({
  fee_not_stated: { status: 422, title: 'The fee is not stated in one of the two ways' },
  finer_than_coin: { status: 422, title: 'An amount is finer than the smallest coin' },
  terms_do_not_fit: { status: 422, title: 'The terms do not fit together' },
  date_in_future: { status: 422, title: 'That day has not come yet' },
  balance_does_not_fit: { status: 422, title: 'What is left does not fit the plan' },
  balance_not_known: { status: 422, title: 'What is left of the plan is not known' },
  fee_not_known: { status: 422, title: 'There is no fee for a restoration' },
  not_in_use: { status: 422, title: 'This is no longer in use' },
  visit_reversed: { status: 409, title: 'The visit was reversed' },
  split_does_not_fit: { status: 422, title: 'The amounts do not fit together' },
  way_not_open: { status: 422, title: 'The work cannot be done in this way' },
});
