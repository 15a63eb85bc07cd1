import { useRef, useState } from 'react';
import { useBooking } from '../../../api/use-booking.js';
import type { Text } from '../../../text/text.js';
import { useText } from '../../../text/text-provider.js';
import { notify } from '../../../ui/notice-store.js';
import { type FieldErrors, useForm } from '../../../ui/use-form.js';
import type { NewCharges } from './api/record-charges.js';
import { recordCharges } from './api/record-charges.js';
import {
  type ChargeField,
  type ChargeRow,
  chargeOf,
  notAmounts,
  positionsToSend,
  proposedRow,
  rowOf,
  splitKey,
  sumOf,
  withField,
} from './charge-draft.js';
import type { ChargesOfVisit } from './charges-of-visit.js';
import { linkedFee } from './fee-choice.js';
import { useTypedMoney } from './use-typed-money.js';

const CHANGED = [['charges'], ['reports'], ['plan-balances'], ['quotes']];

export type Draft = { readonly charges: readonly ChargeRow[]; readonly note: string };

interface Before {
  readonly row: ChargeRow;
  readonly isRecorded: boolean;
}

function check(draft: Draft, before: readonly Before[], t: Text): FieldErrors {
  const words = t.visitCharges;
  const sent = positionsToSend(draft.charges, before);
  const wrong: Record<string, string> = {};
  for (const i of sent) {
    const row = draft.charges[i];
    if (!row) continue;
    for (const field of notAmounts(row)) wrong[`charges[${i}].${field}`] = t.ui.decimal;
    if (row.fee.trim() === '') wrong[`charges[${i}].fee`] = t.ui.required;
    const sum = sumOf(row);
    if (sum && sum.over !== '0.00') wrong[`charges[${i}].patientPays`] = words.mustBeFee;
  }
  if (sent.length === 0) wrong['charges[0].fee'] = words.nothingNew;
  if (sent.some((i) => before[i]?.isRecorded) && draft.note.trim() === '') {
    wrong.note = t.ui.required;
  }
  return wrong;
}

function startOf(of: ChargesOfVisit, typed: (decimal: string) => string): Before[] {
  return of.visit.restorations.flatMap((made): Before[] => {
    if (made.id === null) return [];
    const charge = of.records.find((each) => each.restorationId === made.id && each.current);
    const row = charge
      ? rowOf(charge, typed)
      : proposedRow(made.id, linkedFee(of.fees, made), typed);
    return [{ row, isRecorded: charge !== undefined }];
  });
}

/** The form of what was charged for a visit; only what says something new is sent. */
export function useCharges(of: ChargesOfVisit, onClose: () => void) {
  const t = useText();
  const typed = useTypedMoney();
  const [before] = useState(() => startOf(of, typed));
  const sent = useRef<readonly number[]>([]);
  const { book } = useBooking({ send: recordCharges, changes: CHANGED });
  const form = useForm<Draft, NewCharges>({
    initial: { charges: before.map(({ row }) => row), note: '' },
    fieldOf: (path) =>
      path.replace(/^charges\[(\d+)\]/, (_, n: string) => `charges[${sent.current[+n] ?? 0}]`),
    check: (draft) => check(draft, before, t),
    send: async ({ charges, note }) => {
      sent.current = positionsToSend(charges, before);
      const chosen = sent.current.flatMap((i) => charges[i] ?? []);
      const body = {
        visitId: of.visit.id,
        charges: chosen.map(chargeOf),
        ...(note.trim() === '' ? {} : { note }),
      };
      const answer = await book(body);
      // What the terms say may have changed since it was looked at: then the records say so.
      const differs = chosen.some((row) => {
        const now = answer.charges.find((each) => each.restorationId === row.restorationId);
        return row.workedOut !== '' && now !== undefined && amountsDiffer(row, rowOf(now, typed));
      });
      const words = t.visitCharges;
      notify({ tone: 'done', text: differs ? words.doneOtherwise : words.done });
      return body;
    },
    onDone: onClose,
  });
  const setRow = (i: number, row: ChargeRow) => {
    const rows = form.values.charges.map((each, n) => (n === i ? row : each));
    form.set('charges', rows);
  };
  return {
    form,
    before,
    typed,
    setField: (i: number, field: ChargeField, value: string) => {
      const row = form.values.charges[i];
      if (!row) return;
      setRow(i, withField(row, field, value, typed));
      for (const name of [field, 'patientPays']) form.clearAt(`charges[${i}].${name}`);
    },
    /** Puts a fee of the list in, with its code. */
    setFee: (i: number, code: string, fee: string | undefined) => {
      const row = form.values.charges[i];
      if (!row) return;
      const coded = { ...row, feeCode: code };
      setRow(i, fee === undefined ? coded : withField(coded, 'fee', typed(fee), typed));
      for (const name of ['fee', 'feeCode', 'patientPays']) form.clearAt(`charges[${i}].${name}`);
    },
  };
}

const amountsDiffer = (one: ChargeRow, other: ChargeRow) =>
  splitKey({ ...one, feeCode: '' }) !== splitKey({ ...other, feeCode: '' });

export type Charges = ReturnType<typeof useCharges>;
