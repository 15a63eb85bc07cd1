interface ListedFee {
  readonly templateId: string | null;
  readonly reason: string | null;
  readonly current: object | null;
}

interface Made {
  readonly template: { readonly id: string };
  readonly reason: string;
}

/**
 * The fees a restoration may be charged at: those of its own template and reason, and those that are
 * chosen by their code. One that belongs to another reason is never among them, so that cosmetic
 * work is not offered at the fee of insured work.
 */
export function fittingFees<F extends ListedFee>(fees: readonly F[], made: Made): F[] {
  return fees.filter(
    ({ templateId, reason, current }) =>
      current !== null &&
      (templateId === null || templateId === made.template.id) &&
      (reason === null || reason === made.reason),
  );
}

/** The one the service takes by itself: of the template for the reason, else for any reason. */
export function linkedFee<F extends ListedFee>(fees: readonly F[], made: Made): F | undefined {
  const own = fees.filter(({ templateId }) => templateId === made.template.id);
  return (
    own.find(({ reason }) => reason === made.reason) ?? own.find(({ reason }) => reason === null)
  );
}
