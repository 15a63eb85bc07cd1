import { formatMoney, type Money, money } from '#lib/measure';
import { type IsoDate, newId, type Tx } from '#lib/platform';

export interface FeeVersionRow {
  readonly id: string;
  readonly fee_id: string;
  readonly valid_from: IsoDate;
  readonly fee: string;
  readonly points: string | null;
  readonly point_value: string | null;
  readonly factor: string | null;
  readonly recorded_at: Date;
}

const COLUMNS = `id, fee_id, valid_from, fee, trim_scale(points)::text AS points,
  trim_scale(point_value)::text AS point_value, trim_scale(factor)::text AS factor, recorded_at`;

export async function versionsOf(tx: Tx, feeId: string): Promise<FeeVersionRow[]> {
  return tx.query<FeeVersionRow>(
    `SELECT ${COLUMNS} FROM fee_versions WHERE fee_id = $1 ORDER BY valid_from DESC, id DESC`,
    [feeId],
  );
}

/** The version of each fee that counts on a day; a fee that is not yet valid has none. */
export async function versionsOn(
  tx: Tx,
  feeIds: readonly string[],
  day: IsoDate,
): Promise<ReadonlyMap<string, FeeVersionRow>> {
  const rows = await tx.query<FeeVersionRow>(
    `SELECT DISTINCT ON (fee_id) ${COLUMNS} FROM fee_versions
     WHERE fee_id = ANY($1::uuid[]) AND valid_from <= $2
     ORDER BY fee_id, valid_from DESC, id DESC`,
    [feeIds, day],
  );
  return new Map(rows.map((row) => [row.fee_id, row]));
}

export interface NewFeeVersion {
  readonly feeId: string;
  readonly validFrom: IsoDate;
  readonly fee: Money;
  readonly points: string | null;
  readonly pointValue: string | null;
  readonly factor: string | null;
}

export async function insertFeeVersion(
  tx: Tx,
  personId: string,
  version: NewFeeVersion,
): Promise<void> {
  const { feeId, validFrom, fee, points, pointValue, factor } = version;
  await tx.query(
    `INSERT INTO fee_versions (id, practice_id, fee_id, valid_from, fee, points, point_value,
       factor, recorded_by)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [
      newId(),
      tx.practiceId,
      feeId,
      validFrom,
      formatMoney(fee),
      points,
      pointValue,
      factor,
      personId,
    ],
  );
}

export interface KnownFee {
  readonly id: string;
  readonly code: string;
  readonly feeClass: string | null;
  readonly templateId: string | null;
  readonly reason: string | null;
  readonly active: boolean;
  /** On the day that was asked for; null: not valid yet. */
  readonly fee: Money | null;
}

interface KnownFeeRow extends Omit<KnownFee, 'fee' | 'feeClass' | 'templateId'> {
  readonly fee: string | null;
  readonly fee_class: string | null;
  readonly template_id: string | null;
}

/** The fees that some restorations may be charged at: by their codes, and those of templates. */
export async function loadFees(
  tx: Tx,
  query: {
    readonly codes: readonly string[];
    readonly templateIds: readonly string[];
    readonly day: IsoDate;
  },
): Promise<KnownFee[]> {
  const rows = await tx.query<KnownFeeRow>(
    `SELECT f.id, f.code, f.fee_class, f.template_id, f.reason, f.active, v.fee
     FROM fees f LEFT JOIN LATERAL (
       SELECT fee FROM fee_versions
       WHERE fee_id = f.id AND valid_from <= $3 ORDER BY valid_from DESC, id DESC LIMIT 1) v ON true
     WHERE lower(f.code) = ANY($1::text[]) OR (f.active AND f.template_id = ANY($2::uuid[]))`,
    [query.codes.map((code) => code.trim().toLowerCase()), query.templateIds, query.day],
  );
  return rows.map(({ fee, fee_class, template_id, ...row }) => ({
    ...row,
    feeClass: fee_class,
    templateId: template_id,
    fee: fee === null ? null : money(fee),
  }));
}
