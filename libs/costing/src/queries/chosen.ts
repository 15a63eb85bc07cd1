/** Which restorations are meant, in the order of the parameters $2 to $6; $1 is the practice. */
export interface Choice {
  readonly from?: string;
  readonly to?: string;
  readonly templateId?: string;
  readonly reason?: string;
  readonly dentistId?: string;
}

/** Of `restorations r` and `visits v`. */
export const CHOSEN = `r.practice_id = $1
  AND ($2::date IS NULL OR v.visited_on >= $2)
  AND ($3::date IS NULL OR v.visited_on <= $3)
  AND ($4::uuid IS NULL OR r.template_id = $4)
  AND ($5::text IS NULL OR r.reason = $5)
  AND ($6::uuid IS NULL OR v.dentist_id = $6)`;

export function chosenValues(practiceId: string, choice: Choice): unknown[] {
  return [
    practiceId,
    choice.from ?? null,
    choice.to ?? null,
    choice.templateId ?? null,
    choice.reason ?? null,
    choice.dentistId ?? null,
  ];
}
