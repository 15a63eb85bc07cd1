import type { CostRow } from './groups.js';

export function costRow(change: Partial<CostRow>): CostRow {
  return {
    ...{ restorations: 1, visits: 1, total: '1.00', mean: '1.00', min: '1.00', p10: '1.00' },
    ...{ p50: '1.00', p90: '1.00', max: '1.00', ownCost: '1.00', sharedCost: '0.00' },
    ...{ retakeCost: '0.00', categories: [], templateId: null, templateName: null, reason: null },
    ...{ dentistId: null, dentistName: null, month: null },
    ...change,
  };
}
