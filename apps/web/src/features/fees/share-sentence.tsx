import { formatMoney, isZero } from '#lib/measure';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Meaning } from './meaning.js';

interface Props {
  readonly meaning: Meaning;
  /** Says of which fee it speaks. */
  readonly named?: boolean;
}

/** "Of €200.00 the plan pays …, the patient …; … is written off." */
export function ShareSentence({ meaning, named = false }: Props) {
  const t = useText();
  const w = t.plans;
  const { money } = useFormat();
  const { planPays, patientPays, writeOff } = meaning.share;
  const words = w.sentence(
    money(meaning.price),
    money(formatMoney(planPays)),
    money(formatMoney(patientPays)),
  );
  const rest = isZero(writeOff) ? w.noWriteOff : w.writeOff(money(formatMoney(writeOff)));
  return (
    <>
      {named && `${w.sentenceFor(meaning.fee.code)} `}
      {!meaning.share.covered && `${w.madeFor(t.fees.reasons[meaning.reason])} `}
      {words + rest}
    </>
  );
}
