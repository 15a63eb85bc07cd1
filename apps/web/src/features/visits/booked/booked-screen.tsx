import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay, useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { Caution } from '../../../ui/caution.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { Section } from '../../../ui/section.js';
import { bookedUsageQuery } from '../api/get-booked-usage.js';
import { type BookedVisit, bookedVisitsQuery } from '../api/list-booked-visits.js';
import css from './booked.module.css';
import { BookedDay } from './booked-day.js';
import { BookedRow } from './booked-row.js';
import { BookingDialog } from './booking-dialog.js';
import { DiarySection } from './diary-section.js';
import { DropDialog } from './drop-dialog.js';
import { daysAfter, weekOf } from './week.js';
import { WeekBar } from './week-bar.js';

const route = getRouteApi('/in/visits/booked');

/** What is booked, week by week, with what each day will use. */
export function BookedScreen() {
  const t = useText();
  const may = useMay();
  const { today } = useSession();
  const { week, form, drop } = route.useSearch();
  const navigate = route.useNavigate();
  const days = weekOf(week ?? today);
  const [from = '', to = ''] = [days[0], days[6]];
  const query = useQuery(bookedVisitsQuery({ from, to, limit: 500 }));
  const missed = useQuery(bookedVisitsQuery({ state: 'not recorded yet', limit: 50 }));
  const past = (missed.data?.items ?? []).filter((each) => each.day < from || each.day > to);
  const known = [...(query.data?.items ?? []), ...past];
  const close = () =>
    void navigate({
      search: (old) => ({ ...old, form: undefined, drop: undefined }),
      replace: true,
      resetScroll: false,
    });
  return (
    <>
      <PageHead title={t.booked.title} lead={t.booked.lead}>
        <ButtonLink to="/visits" variant="default">
          {t.booked.allVisits}
        </ButtonLink>
        {may('visits.post') && (
          <Button
            onClick={() =>
              void navigate({ search: (old) => ({ ...old, form: 'new' }), resetScroll: false })
            }
          >
            {t.booked.book}
          </Button>
        )}
      </PageHead>
      <WeekBar days={days} today={today} />
      {past.length > 0 && (
        <Section title={t.booked.missed} hint={t.booked.missedHint}>
          <ul className={css.rows}>
            {past.map((visit) => (
              <BookedRow key={visit.id} visit={visit} withDay />
            ))}
          </ul>
        </Section>
      )}
      <Loaded query={query}>
        {(page) => (
          <div aria-busy={query.isPlaceholderData} className={css.week}>
            {page.nextCursor !== null && <p>{t.booked.tooMany}</p>}
            <Days days={days} visits={page.items} />
          </div>
        )}
      </Loaded>
      <DiarySection />
      <BookingDialog
        visit={known.find(({ id }) => id === form)}
        opened={form === 'new' || known.some(({ id }) => id === form)}
        day={days.find((each) => each >= today) ?? today}
        onClose={close}
      />
      <DropDialog visit={known.find(({ id }) => id === drop)} onClose={close} />
      <Caution />
    </>
  );
}

/** Where a week is empty, the next booking is one step away. */
function EmptyWeek({ lastDay }: { readonly lastDay: string }) {
  const words = useText().booked;
  const format = useFormat();
  const later = useQuery(
    bookedVisitsQuery({ from: daysAfter(lastDay, 1), state: 'booked', limit: 1 }),
  );
  const next = later.data?.items[0]?.day;
  return (
    <EmptyState title={words.empty} hint={words.emptyHint}>
      {next !== undefined && next > lastDay && (
        <ButtonLink to="/visits/booked" search={{ week: next }} variant="default">
          {words.nextBooked(format.dayShort(next))}
        </ButtonLink>
      )}
    </EmptyState>
  );
}

interface DaysProps {
  readonly days: readonly string[];
  readonly visits: readonly BookedVisit[];
}

function Days({ days, visits }: DaysProps) {
  const [from = '', to = ''] = [days[0], days[6]];
  const usage = useQuery(bookedUsageQuery(from, to)).data?.days ?? [];
  if (visits.length === 0) {
    return <EmptyWeek lastDay={to} />;
  }
  return days
    .map((day) => ({ day, own: visits.filter((visit) => visit.day === day) }))
    .filter(({ own }) => own.length > 0)
    .map(({ day, own }) => (
      <BookedDay key={day} day={day} visits={own} usage={usage.find((each) => each.day === day)} />
    ));
}
