import type { TakenNames } from '../db/taken.js';

const id = { field: 'id', detail: 'Something with this id exists already.' };
const named = (what: string) => ({
  field: 'name',
  detail: `There is already a ${what} of this name.`,
});

export const SUPPLIER_NAMES: TakenNames = { suppliers_pkey: id, suppliers_name: named('supplier') };

export const LOCATION_NAMES: TakenNames = { locations_pkey: id, locations_name: named('location') };

export const CONSUMABLE_NAMES: TakenNames = {
  consumables_pkey: id,
  consumables_name: {
    field: 'name',
    detail: 'There is already a consumable of this name with the same shade, size and grit.',
  },
};

export const PRESENTATION_NAMES: TakenNames = {
  presentations_pkey: id,
  presentations_name: {
    field: 'name',
    detail: 'This consumable already has a presentation of this name.',
  },
};
