import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { useReport } from '../../ui/use-report.js';
import { titleOf } from './alert-words.js';
import type { Alert } from './api/list-alerts.js';
import { snoozeAlert } from './api/snooze-alert.js';
import { SettleLink } from './settle-link.js';

const route = getRouteApi('/in/today');

interface Props {
  readonly alert: Alert;
  readonly asOf: string;
}

/** What settles an alert, and putting it off or taking it back up; a held lot cannot wait. */
export function RowActions({ alert, asOf }: Props) {
  const may = useMay();
  const mayWait = may('alerts.snooze') && alert.kind !== 'recalled lot on hand';
  return (
    <>
      <SettleLink alert={alert} />
      {mayWait && (alert.snoozed ? <Wake alert={alert} asOf={asOf} /> : <PutOff alert={alert} />)}
    </>
  );
}

function PutOff({ alert }: { readonly alert: Alert }) {
  const t = useText();
  const navigate = route.useNavigate();
  const open = () =>
    void navigate({
      search: (old) => ({ ...old, off: alert.id }),
      replace: true,
      resetScroll: false,
    });
  return (
    <Button
      variant="subtle"
      aria-label={`${t.today.snooze.putOff}: ${titleOf(alert, t)}`}
      onClick={open}
    >
      {t.today.snooze.putOff}
    </Button>
  );
}

function Wake({ alert, asOf }: Props) {
  const t = useText();
  const report = useReport();
  const words = t.today.snooze;
  const { book, isBooking } = useBooking({ send: snoozeAlert, changes: [['alerts']] });
  const wake = () =>
    void book({ alertId: alert.id, until: asOf, reason: words.wokenReason })
      .then(() => notify({ tone: 'done', text: words.woken(titleOf(alert, t)) }))
      .catch(report);
  return (
    <Button
      variant="subtle"
      loading={isBooking}
      aria-label={`${words.wake}: ${titleOf(alert, t)}`}
      onClick={wake}
    >
      {words.wake}
    </Button>
  );
}
