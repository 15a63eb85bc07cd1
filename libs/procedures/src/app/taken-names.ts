import type { TakenNames } from '#lib/catalogue';

export const TEMPLATE_NAMES: TakenNames = {
  procedure_templates_pkey: { field: 'id', detail: 'Something with this id exists already.' },
  procedure_templates_name: {
    field: 'name',
    detail: 'There is already a procedure template of this name.',
  },
};
