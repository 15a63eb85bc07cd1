import { Button } from '@mantine/core';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay, useSession } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Day } from '../../../ui/values.js';
import type { BookedVisit } from '../api/list-booked-visits.js';
import css from './booked.module.css';
import { bookingWords, restorationWords, whoseWords } from './booking-words.js';

const route = getRouteApi('/in/visits/booked');

interface Props {
  readonly visit: BookedVisit;
  readonly withDay?: boolean;
}

/** One booking: whose, what, by whom and where, and what may be done with it. */
export function BookedRow({ visit, withDay = false }: Props) {
  const t = useText();
  const whose = whoseWords(visit, t);
  const where = [visit.dentist?.name, visit.location?.name].filter((part) => part !== undefined);
  return (
    <li className={css.row}>
      <div className={css.what}>
        {(whose !== null || withDay) && (
          <p className={css.whose}>
            {withDay && <Day value={visit.day} />} {whose}
          </p>
        )}
        {visit.restorations.map((each, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: they have no other name and keep their order
          <p key={i}>{restorationWords(each)}</p>
        ))}
        {where.length > 0 && <p className={css.quiet}>{where.join(', ')}</p>}
        <State visit={visit} />
      </div>
      {visit.state === 'booked' && <Actions visit={visit} />}
    </li>
  );
}

function State({ visit }: { readonly visit: BookedVisit }) {
  const t = useText();
  const { state, kept, alike, dropped, visits } = visit;
  return (
    <p className={css.states}>
      {visit.notRecordedYet && <StatusMark tone="caution">{t.booked.missed}</StatusMark>}
      {state === 'kept' && <StatusMark tone="good">{t.booked.kept}</StatusMark>}
      {state !== 'kept' && kept > 0 && (
        <StatusMark tone="quiet">{t.booked.partly(kept, alike)}</StatusMark>
      )}
      {dropped && <StatusMark tone="quiet">{t.booked.dropped(dropped.note)}</StatusMark>}
      {visits.map(({ id }) => (
        <Link key={id} to="/visits/$visitId" params={{ visitId: id }}>
          {t.booked.open}
        </Link>
      ))}
    </p>
  );
}

function Actions({ visit }: { readonly visit: BookedVisit }) {
  const t = useText();
  const may = useMay();
  const { today } = useSession();
  const navigate = route.useNavigate();
  if (!may('visits.post')) return null;
  const called = (action: string) => `${action}: ${bookingWords(visit, t)}`;
  const open = (part: { form?: string; drop?: string }) =>
    void navigate({ search: (old) => ({ ...old, ...part }), resetScroll: false });
  return (
    <div className={`${css.actions ?? ''} tb-screen-only`}>
      {visit.day <= today && (
        <ButtonLink
          to="/chairside"
          search={{ booking: visit.id }}
          variant="default"
          aria-label={called(t.booked.record)}
        >
          {t.booked.record}
        </ButtonLink>
      )}
      <Button
        variant="subtle"
        aria-label={called(t.booked.change)}
        onClick={() => open({ form: visit.id })}
      >
        {t.booked.change}
      </Button>
      <Button
        variant="subtle"
        aria-label={called(t.booked.drop)}
        onClick={() => open({ drop: visit.id })}
      >
        {t.booked.drop}
      </Button>
    </div>
  );
}
