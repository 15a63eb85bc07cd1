import { useEffect, useRef } from 'react';
import type { ToothNotation } from '#lib/dentition';
import { newKey } from '../../api/idempotency.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { useReport } from '../../ui/use-report.js';
import { getBookedVisit } from './api/get-booked-visit.js';
import { isBlank, type VisitDraft } from './draft/draft.js';
import { freshDraft } from './draft/draft-store.js';
import { fromBooking } from './draft/from-booking.js';

interface Props {
  readonly bookingId: string;
  readonly notation: ToothNotation;
  readonly draft: VisitDraft;
  readonly begin: (draft: VisitDraft) => void;
  readonly onTaken: () => void;
}

/**
 * Begins the visit that keeps a booking, once the booking was fetched; shows nothing. What was begun
 * before is not lost: it stays, and the person is told.
 */
export function TakeBooking(props: Props): null {
  const t = useText();
  const report = useReport();
  const now = useRef({ props, t, report });
  now.current = { props, t, report };
  const { bookingId } = props;
  useEffect(() => {
    let gone = false;
    const take = async () => {
      const booking = await getBookedVisit(bookingId);
      if (gone) return;
      const { draft, begin, onTaken, notation } = now.current.props;
      const words = now.current.t.chairside;
      onTaken();
      if (draft.bookedVisit?.id === booking.id) return;
      if (booking.state !== 'booked') notify({ tone: 'problem', text: words.booking.closed });
      else if (!isBlank(draft)) notify({ tone: 'problem', text: words.offline.unfinished });
      // The service writes teeth as the practice does, whatever this screen shows.
      else begin(fromBooking(freshDraft(), booking, { notation, newKey }));
    };
    take().catch((error: unknown) => {
      if (gone) return;
      now.current.props.onTaken();
      now.current.report(error);
    });
    return () => {
      gone = true;
    };
  }, [bookingId]);
  return null;
}
