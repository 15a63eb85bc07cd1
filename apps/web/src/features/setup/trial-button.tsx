import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { useReport } from '../../ui/use-report.js';
import { tryNotice } from './api/notice-settings.js';

/** Sends a trial message to what was saved last, and says how it went. */
export function TrialButton({ channel }: { readonly channel: 'digest' | 'webhook' }) {
  const w = useText().setupMessages;
  const report = useReport();
  const { book, isBooking } = useBooking({ send: tryNotice, changes: [] });
  const run = () =>
    void book(channel)
      .then(({ arrived, problem }) =>
        arrived
          ? notify({ tone: 'done', text: w.arrived })
          : notify({ tone: 'problem', text: w.failed(problem ?? '') }),
      )
      .catch(report);
  return (
    <Button variant="default" loading={isBooking} onClick={run}>
      {w.trial}
    </Button>
  );
}
