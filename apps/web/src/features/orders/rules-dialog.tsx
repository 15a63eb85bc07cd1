import { useQuery } from '@tanstack/react-query';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { Dialog } from '../../ui/dialog.js';
import { DecimalField, TextField, WholeField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { useTyped } from '../../ui/use-typed.js';
import { type OrderRules, orderRulesQuery, setOrderRules } from './api/order-rules.js';
import { amountProblem, wholeProblem } from './typed-values.js';

interface Props {
  readonly opened: boolean;
  readonly onClose: () => void;
}

/** What the practice decided about its orders; for its owner. */
export function RulesDialog({ opened, onClose }: Props) {
  const w = useText().orders.rulesForm;
  return (
    <Dialog title={w.title} opened={opened} onClose={onClose}>
      {opened && <RulesLoaded onClose={onClose} />}
    </Dialog>
  );
}

function RulesLoaded({ onClose }: Pick<Props, 'onClose'>) {
  const rules = useQuery(orderRulesQuery);
  return <Loaded query={rules}>{(data) => <RulesForm rules={data} onClose={onClose} />}</Loaded>;
}

function useRulesForm(rules: OrderRules, onClose: () => void) {
  const t = useText();
  const typed = useTyped();
  const { book } = useBooking({ send: setOrderRules, changes: [['order-rules'], ['orders']] });
  return useForm({
    initial: {
      monthlyBudget: rules.monthlyBudget == null ? '' : typed(rules.monthlyBudget),
      approveUpTo: rules.approveUpTo == null ? '' : typed(rules.approveUpTo),
      lateAfterDays: String(rules.lateAfterDays),
      deliverTo: rules.deliverTo ?? '',
    },
    check: (values) => ({
      monthlyBudget: amountProblem(values.monthlyBudget, t),
      approveUpTo: amountProblem(values.approveUpTo, t),
      lateAfterDays: wholeProblem(values.lateAfterDays, [0, 60], t),
    }),
    send: (values) =>
      book({
        monthlyBudget: asDecimal(values.monthlyBudget) ?? null,
        approveUpTo: asDecimal(values.approveUpTo) ?? null,
        lateAfterDays: Number(values.lateAfterDays),
        deliverTo: values.deliverTo.trim() || null,
      }),
    onDone: () => {
      notify({ tone: 'done', text: t.orders.rulesForm.done });
      onClose();
    },
  });
}

function RulesForm({
  rules,
  onClose,
}: {
  readonly rules: OrderRules;
  readonly onClose: () => void;
}) {
  const w = useText().orders.rulesForm;
  const { money, currency } = useFormat();
  const t = useText();
  const form = useRulesForm(rules, onClose);
  return (
    <Form form={form}>
      <FieldRow>
        <DecimalField
          label={w.monthlyBudget}
          hint={w.monthlyBudgetHint}
          unit={currency}
          {...form.field('monthlyBudget')}
        />
        <DecimalField
          label={w.approveUpTo}
          hint={w.approveUpToHint}
          unit={currency}
          {...form.field('approveUpTo')}
        />
      </FieldRow>
      {rules.budgetLeft !== null && <p>{w.left(money(rules.budgetLeft))}</p>}
      <WholeField
        label={w.lateAfterDays}
        hint={w.lateAfterDaysHint}
        {...form.field('lateAfterDays')}
      />
      <TextField
        label={w.deliverTo}
        hint={w.deliverToHint}
        maxLength={300}
        {...form.field('deliverTo')}
      />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
      </FormActions>
    </Form>
  );
}
