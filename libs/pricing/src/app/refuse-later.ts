import type { IsoDate } from '#lib/platform';
import { refusePricing } from '../pricing.refusals.js';

export function refuseLater(field: string, day: IsoDate, today: IsoDate): void {
  if (day <= today) return;
  throw refusePricing('date_in_future', `${day} is after today, ${today}.`, [
    { field, message: `must not be after today, ${today}` },
  ]);
}
