import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { useTyped } from '../../ui/use-typed.js';
import type { FeeHistory } from './api/list-fees.js';
import { addFeeVersion } from './api/save-fee.js';
import css from './fees.module.css';
import { PriceFields } from './price-fields.js';
import { type PriceValues, priceBody, priceErrors, priceValues } from './price-values.js';
import { useCoin } from './use-coin.js';

interface Props {
  readonly fee: FeeHistory;
  readonly onClose: () => void;
}

/** A new price from a day on, which begins as the one that counts now. */
export function VersionForm({ fee, onClose }: Props) {
  const t = useText();
  const format = useFormat();
  const coin = useCoin();
  const typed = useTyped();
  const { today } = useSession();
  const { book } = useBooking({
    send: (values: PriceValues, key) => addFeeVersion(fee.id, priceBody(values), key),
    changes: [['fees'], ['fee-plans'], ['quotes']],
  });
  const form = useForm({
    initial: priceValues(fee.current ?? fee.versions[0] ?? null, today, typed),
    check: (values) => priceErrors(values, coin, t),
    send: book,
    onDone: (saved, { validFrom }) => {
      const text = t.fees.versionSaved(saved.code, format.day(validFrom));
      notify({ tone: 'done', text });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <p className={css.quiet}>{t.fees.versionHint}</p>
      <PriceFields values={form.values} field={form.field} />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
