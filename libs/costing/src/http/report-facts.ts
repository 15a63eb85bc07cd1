interface Asked {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly reason?: string | undefined;
  readonly templateId?: string | undefined;
  readonly dentistId?: string | undefined;
}

interface Named {
  readonly templateName?: string | null;
  readonly dentistName?: string | null;
}

/** What a report was made for, in sentences for its file: days, and which restorations. */
export function factsOf(asked: Asked, rows: readonly Named[] = []): string[] {
  const { reason, templateId, dentistId } = asked;
  const [first] = rows;
  return [
    periodFact(asked),
    ...(reason === undefined ? [] : [`Only reason ${reason}.`]),
    ...(templateId === undefined ? [] : [`Only ${first?.templateName ?? 'one template'}.`]),
    ...(dentistId === undefined ? [] : [`Only ${first?.dentistName ?? 'one dentist'}.`]),
  ];
}

function periodFact({ from, to }: Asked): string {
  if (from === undefined) return to === undefined ? 'All days.' : `Until ${to}.`;
  return to === undefined ? `From ${from}.` : `${from} to ${to}.`;
}
