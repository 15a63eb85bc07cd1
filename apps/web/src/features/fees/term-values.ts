import { formatQuantity, parseDecimal, quantityFromMicro } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import { sentMoney } from './plan-values.js';
import { moneyError } from './price-values.js';
import { REASONS, type Reason, type Term } from './terms.js';

/** Terms as they are typed; one flag for each reason. */
export type TermValues = {
  about: 'fee' | 'class';
  feeId: string;
  feeClass: string;
  validFrom: string;
  allowedFee: string;
  alternateFee: string;
  coverage: string;
  deductibleApplies: boolean;
  cosmeticNote: string;
} & Record<Reason, boolean>;

export function termValues(about: TermValues['about'], validFrom: string): TermValues {
  return {
    ...{ about, validFrom, feeId: '', feeClass: '', allowedFee: '', alternateFee: '' },
    ...{ coverage: '', deductibleApplies: true, cosmeticNote: '' },
    ...{ decay: true, fracture: true, wear: false, cosmetic: false },
  };
}

const PERCENT_SCALE = 4;
const WHOLE = 100n * 10n ** BigInt(PERCENT_SCALE);

/** '80' percent -> '0.8'; four digits after the point of a percentage are six of a share. */
export function shareOfPercent(typed: string): string | undefined {
  const text = asDecimal(typed, PERCENT_SCALE);
  const read = text === undefined ? undefined : parseDecimal(text, PERCENT_SCALE);
  if (!read?.ok || read.value < 0n || read.value > WHOLE) return undefined;
  return formatQuantity(quantityFromMicro(read.value));
}

const reasonsOf = (values: TermValues): Reason[] => REASONS.filter((reason) => values[reason]);

interface Coin {
  readonly step: bigint;
  readonly words: string;
}

const isBlank = (text: string) => text.trim() === '';

export function termErrors(values: TermValues, coin: Coin, t: Text): FieldErrors {
  const w = t.plans;
  const ofFee = values.about === 'fee';
  const optional = (text: string) => (isBlank(text) ? undefined : moneyError(text, coin, t));
  return {
    feeId: ofFee && values.feeId === '' ? t.ui.choose : undefined,
    feeClass: !ofFee && isBlank(values.feeClass) ? t.ui.required : undefined,
    validFrom: values.validFrom === '' ? t.ui.required : undefined,
    allowedFee: ofFee ? optional(values.allowedFee) : undefined,
    alternateFee: ofFee ? optional(values.alternateFee) : undefined,
    coverage: coverageError(values, w),
    reasons: reasonsError(values, w),
    cosmeticNote:
      ofFee && values.cosmetic && isBlank(values.cosmeticNote) ? t.ui.required : undefined,
  };
}

function coverageError(values: TermValues, w: Text['plans']): string | undefined {
  const { about, coverage, allowedFee, alternateFee } = values;
  if (!isBlank(coverage)) {
    return shareOfPercent(coverage) === undefined ? w.coverageWrong : undefined;
  }
  const saysFees = about === 'fee' && !(isBlank(allowedFee) && isBlank(alternateFee));
  return saysFees ? undefined : w.saysSomething;
}

function reasonsError(values: TermValues, w: Text['plans']): string | undefined {
  if (reasonsOf(values).length === 0) return w.needsReason;
  return values.about === 'class' && values.cosmetic ? w.cosmeticClass : undefined;
}

export function termBody(values: TermValues): Shape<'NewPlanTermDto'> {
  const ofFee = values.about === 'fee';
  const amount = (text: string) => (!ofFee || isBlank(text) ? null : sentMoney(text));
  return {
    feeId: ofFee ? values.feeId : null,
    feeClass: ofFee ? null : values.feeClass.trim(),
    validFrom: values.validFrom,
    allowedFee: amount(values.allowedFee),
    alternateFee: amount(values.alternateFee),
    coverage: isBlank(values.coverage) ? null : (shareOfPercent(values.coverage) ?? null),
    deductibleApplies: values.deductibleApplies,
    reasons: reasonsOf(values),
    cosmeticNote: values.cosmetic && ofFee ? values.cosmeticNote.trim() : null,
  };
}

/** Comes after every id of the service, so that among terms of one day it is the one that counts. */
const LAST_ID = 'ffffffff-ffff-ffff-ffff-ffffffffffff';

/** What is typed, as if it were written down already; undefined while it is not whole. */
export function draftTerm(values: TermValues, coin: Coin, t: Text): Term | undefined {
  const wrong = Object.values(termErrors(values, coin, t)).some((error) => error !== undefined);
  if (wrong) return undefined;
  const body = termBody(values);
  return {
    id: LAST_ID,
    feeId: body.feeId ?? null,
    feeCode: null,
    feeClass: body.feeClass ?? null,
    validFrom: body.validFrom,
    allowedFee: body.allowedFee ?? null,
    alternateFee: body.alternateFee ?? null,
    coverage: body.coverage ?? null,
    deductibleApplies: values.deductibleApplies,
    reasons: reasonsOf(values),
    cosmeticNote: body.cosmeticNote ?? null,
  };
}
