import { type IsoDate, refuse, type Tx } from '#lib/platform';

export interface CostRateRow {
  readonly id: string;
  readonly valid_from: IsoDate;
  readonly yearly_cost: string;
  readonly practical_minutes: number;
  readonly assistant_rate: string | null;
  readonly assistant_practical_minutes: number | null;
  readonly note: string | null;
  readonly recorded_by: string;
  readonly recorder: string;
  readonly recorded_at: Date;
}

const RATES = `
SELECT q.id, q.valid_from, q.yearly_cost, q.practical_minutes, q.assistant_rate,
       q.assistant_practical_minutes, q.note, q.recorded_by, p.display_name AS recorder, q.recorded_at
FROM cost_rates q JOIN people p ON p.id = q.recorded_by
WHERE q.practice_id = $1 ORDER BY q.valid_from`;

/** The rates of the practice, the earliest first. */
export function loadCostRates(tx: Tx): Promise<CostRateRow[]> {
  return tx.named<CostRateRow>('costing.rates', RATES, [tx.practiceId]);
}

export interface NewCostRateRow {
  readonly id: string;
  readonly validFrom: IsoDate;
  readonly yearlyCost: string;
  readonly practicalMinutes: number;
  readonly assistantRate: string | null;
  readonly assistantPracticalMinutes: number | null;
  readonly note: string | null;
}

/** Writes a rate; refuses a second one from the same day. */
export async function insertCostRate(tx: Tx, by: string, rate: NewCostRateRow): Promise<void> {
  const rows = await tx.query(
    `INSERT INTO cost_rates (id, practice_id, valid_from, yearly_cost, practical_minutes,
       assistant_rate, assistant_practical_minutes, note, recorded_by)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9) ON CONFLICT DO NOTHING RETURNING id`,
    [
      rate.id,
      tx.practiceId,
      rate.validFrom,
      rate.yearlyCost,
      rate.practicalMinutes,
      rate.assistantRate,
      rate.assistantPracticalMinutes,
      rate.note,
      by,
    ],
  );
  if (rows.length > 0) return;
  const [sameDay] = await tx.query(
    'SELECT FROM cost_rates WHERE practice_id = $1 AND valid_from = $2',
    [tx.practiceId, rate.validFrom],
  );
  const field = sameDay ? 'validFrom' : 'id';
  const message = sameDay ? 'has a rate already' : 'is used by another rate';
  throw refuse('already_exists', `${field} ${message}.`, [{ field, message }]);
}
