import { defineRefusals } from '#lib/platform';

export const refuseCatalogue = defineRefusals({
  location_inside_itself: { status: 422, title: 'A place cannot lie inside itself' },
  location_too_deep: { status: 422, title: 'Places are nested too deep' },
  location_holds_stock: { status: 409, title: 'There is still stock in this place' },
  stock_unit_fixed: { status: 409, title: 'The stock unit can no longer change' },
  presentation_fixed: { status: 409, title: 'What is in the pack can no longer change' },
  figures_do_not_fit: { status: 422, title: 'Some figures do not fit together' },
});
