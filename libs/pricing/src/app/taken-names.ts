import type { TakenNames } from '#lib/catalogue';

export const FEE_NAMES: TakenNames = {
  fees_code: { field: 'code', detail: 'There is already a fee with this code.' },
  fees_link: {
    field: 'templateId',
    detail: 'Another fee in use is already that of this template and reason.',
  },
};

export const PLAN_NAMES: TakenNames = {
  fee_plans_name: { field: 'name', detail: 'There is already a plan of this name.' },
};
