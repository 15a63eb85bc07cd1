import type { Tx } from '#lib/platform';

/** Whether every visit is booked here, and for how many days from today on nothing will be added. */
export interface BookedPlanning {
  readonly wholeDay: boolean;
  readonly fullDays: number;
}

/** Until somebody says otherwise: what is booked is part of the day only. */
const PLAIN: BookedPlanning = { wholeDay: false, fullDays: 0 };

export async function loadBookedPlanning(tx: Tx): Promise<BookedPlanning> {
  const [row] = await tx.query<BookedPlanning>(
    `SELECT whole_day AS "wholeDay", full_days AS "fullDays" FROM booked_planning
     WHERE practice_id = $1`,
    [tx.practiceId],
  );
  return row ?? PLAIN;
}

export async function saveBookedPlanning(tx: Tx, planning: BookedPlanning): Promise<void> {
  await tx.query(
    `INSERT INTO booked_planning (practice_id, whole_day, full_days) VALUES ($1, $2, $3)
     ON CONFLICT (practice_id) DO UPDATE SET whole_day = $2, full_days = $3`,
    [tx.practiceId, planning.wholeDay, planning.fullDays],
  );
}
