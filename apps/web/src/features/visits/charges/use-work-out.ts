import { useState } from 'react';
import { ProblemError } from '../../../api/problem.js';
import { useText } from '../../../text/text-provider.js';
import { useReport } from '../../../ui/use-report.js';
import { type PlanLeft, previewCharges } from './api/preview-charges.js';
import { askedOf, type ChargeRow, notAmounts, rowOf } from './charge-draft.js';
import type { Charges } from './use-charges.js';

interface Said {
  readonly left: readonly PlanLeft[];
  readonly errors: Readonly<Record<string, string | undefined>>;
}

const NOTHING: Said = { left: [], errors: {} };

/** Asks the terms of the plans who pays what, and writes the answer into the rows. */
export function useWorkOut(visitId: string, { form, typed }: Charges) {
  const t = useText();
  const report = useReport();
  const [said, setSaid] = useState(NOTHING);
  const [isBusy, setBusy] = useState(false);

  const refuse = (error: unknown, positions: readonly number[]) => {
    if (!(error instanceof ProblemError) || !error.problem.errors?.length) return report(error);
    const { code, errors } = error.problem;
    const at = errors.map(({ field, message }) => {
      const words =
        code === 'balance_not_known' ? t.visitCharges.untold : t.problems.fieldWords(message);
      const path = field.replace(
        /^charges\[(\d+)\]/,
        (_, n: string) => `charges[${positions[+n]}]`,
      );
      return [path, words] as const;
    });
    setSaid({ left: [], errors: Object.fromEntries(at) });
  };

  const workOut = async () => {
    const rows = form.values.charges;
    const positions = [...rows.keys()].filter((i) => isAskable(rows[i]));
    if (positions.length === 0) return setSaid(NOTHING);
    setBusy(true);
    try {
      const charges = positions.flatMap((i) => rows[i] ?? []).map(askedOf);
      const answer = await previewCharges({ visitId, charges });
      const shares = new Map(answer.charges.map((each) => [each.restorationId, each]));
      const next = rows.map((row): ChargeRow => {
        const share = shares.get(row.restorationId);
        return share ? rowOf(share, typed) : row;
      });
      form.set('charges', next);
      for (const i of positions) form.clearAt(`charges[${i}].patientPays`);
      setSaid({ left: answer.left, errors: {} });
    } catch (error) {
      refuse(error, positions);
    } finally {
      setBusy(false);
    }
  };

  return {
    workOut: () => void workOut(),
    isBusy,
    left: said.left,
    errorAt: (path: string) => said.errors[path],
    /** What was said counts no longer once something it rests on is typed over. */
    forget: () => setSaid(NOTHING),
  };
}

export type WorkOut = ReturnType<typeof useWorkOut>;

/** Rows under a plan whose fee is an amount. */
function isAskable(row: ChargeRow | undefined): boolean {
  if (!row || row.planId === '' || row.fee.trim() === '') return false;
  return !notAmounts(row).includes('fee');
}
