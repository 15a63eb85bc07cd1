import { defineRefusals } from '#lib/platform';

export const refuseStock = defineRefusals({
  date_in_future: { status: 422, title: 'That day has not come yet' },
  received_later: { status: 422, title: 'The goods were received later' },
  not_enough_stock: { status: 422, title: 'There is not that much there' },
  more_than_received: { status: 422, title: 'That is more than was ever received' },
  not_whole: { status: 422, title: 'This is counted in whole pieces' },
  wrong_expiry: { status: 409, title: 'This lot is recorded with another expiry date' },
  not_in_use: { status: 422, title: 'This is no longer in use' },
  nothing_to_do: { status: 422, title: 'That would change nothing' },
  cannot_open: { status: 422, title: 'This cannot be opened' },
  discount_too_large: { status: 422, title: 'The discount is larger than the goods' },
  nothing_to_bear: { status: 422, title: 'Nothing could bear this cost' },
  already_reversed: { status: 409, title: 'This was reversed before' },
  cannot_reverse: { status: 422, title: 'This cannot be reversed on its own' },
  stock_moved_on: { status: 409, title: 'The goods have moved on since' },
  too_large: { status: 422, title: 'The amount is larger than the book can hold' },
});
