import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { DateField, NoteField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { sentenceOf, titleOf } from './alert-words.js';
import type { AlertList } from './api/list-alerts.js';
import { snoozeAlert } from './api/snooze-alert.js';
import { LONGEST_DAYS, later, USUAL_DAYS } from './days-later.js';

const route = getRouteApi('/in/today');

/** Puts one alert off; the address says which. */
export function SnoozeDialog({ list }: { readonly list: AlertList }) {
  const t = useText();
  const { off } = route.useSearch();
  const navigate = route.useNavigate();
  const alert = list.alerts.find(({ id }) => id === off);
  const close = () =>
    void navigate({
      search: (old) => ({ ...old, off: undefined }),
      replace: true,
      resetScroll: false,
    });
  return (
    <Dialog title={t.today.snooze.title} opened={alert !== undefined} onClose={close}>
      {alert && <SnoozeForm alert={alert} asOf={list.asOf} onClose={close} />}
    </Dialog>
  );
}

interface FormProps {
  readonly alert: AlertList['alerts'][number];
  readonly asOf: string;
  readonly onClose: () => void;
}

function SnoozeForm({ alert, asOf, onClose }: FormProps) {
  const t = useText();
  const format = useFormat();
  const words = t.today.snooze;
  const { book } = useBooking({ send: snoozeAlert, changes: [['alerts']] });
  const last = later(asOf, LONGEST_DAYS);
  const form = useForm({
    initial: { until: later(asOf, USUAL_DAYS), reason: '' },
    check: ({ until, reason }) => ({
      until: until > asOf && until <= last ? undefined : words.between(format.day(last)),
      reason: reason.trim() === '' ? t.ui.required : undefined,
    }),
    send: ({ until, reason }) => book({ alertId: alert.id, until, reason: reason.trim() }),
    onDone: ({ until }) => {
      onClose();
      notify({ tone: 'done', text: words.done(titleOf(alert, t), format.day(until)) });
    },
  });
  return (
    <Form form={form}>
      <p>{sentenceOf(alert, asOf, format, t)}</p>
      <DateField
        label={words.until}
        hint={words.untilHint}
        min={later(asOf, 1)}
        max={last}
        {...form.field('until')}
      />
      <NoteField label={words.reason} maxLength={500} {...form.field('reason')} />
      <FormActions>
        <SubmitButton form={form}>{words.confirm}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
