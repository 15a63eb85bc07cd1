import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import { formatTooth, parseTooth } from '#lib/dentition';
import { useBooking } from '../../api/use-booking.js';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { ConfirmReversal } from '../../ui/confirm-reversal.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { PageHead } from '../../ui/page-head.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Money } from '../../ui/values.js';
import { bookedQuery } from './api/get-visit.js';
import type { Visit } from './api/post-visit.js';
import { reverseVisit } from './api/reverse-visit.js';
import css from './booked.module.css';
import { useChairside } from './chairside-context.js';
import { CHANGED } from './use-post.js';

interface Props {
  readonly visitId: string;
  readonly onNext: () => void;
}

/** The visit is in the book: what it cost, the way back, and the next one. */
export function Booked({ visitId, onNext }: Props) {
  const query = useQuery(bookedQuery(visitId));
  return <Loaded query={query}>{(visit) => <BookedVisit visit={visit} onNext={onNext} />}</Loaded>;
}

function BookedVisit({ visit, onNext }: { readonly visit: Visit; readonly onNext: () => void }) {
  const t = useText();
  const words = t.chairside.booked;
  const next = useRef<HTMLButtonElement>(null);
  useEffect(() => next.current?.focus(), []);
  return (
    <>
      <PageHead title={words.title(visit.chartReference)} lead={<VisitState visit={visit} />} />
      <Figures>
        <Figure label={words.cost} large>
          <Money value={visit.materialCost} />
        </Figure>
        {visit.retakeCost !== '0.00' && (
          <Figure label={words.retake} large tone="caution">
            <Money value={visit.retakeCost} />
          </Figure>
        )}
      </Figures>
      {visit.estimated && <p className={css.note}>{words.estimated}</p>}
      <CostTable visit={visit} />
      {visit.restorations.length > 1 && (
        <p className={css.note}>{words.shareKeys[visit.costShareKey]}</p>
      )}
      <div className={css.ways}>
        <Button ref={next} size="lg" onClick={onNext}>
          {words.next}
        </Button>
        <Undo visit={visit} />
        <Link to="/visits/$visitId" params={{ visitId: visit.id }} className={css.link}>
          {words.open}
        </Link>
      </div>
      <Caution />
    </>
  );
}

function VisitState({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const format = useFormat();
  const facts = [format.day(visit.visitedOn), visit.dentist.name, visit.location.name].join(' · ');
  return (
    <>
      {facts}{' '}
      {visit.reversal && <StatusMark tone="quiet">{t.chairside.booked.reversed}</StatusMark>}
    </>
  );
}

function CostTable({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const { notation } = useChairside();
  const words = t.chairside.booked;
  const reasons: Readonly<Record<string, string>> = t.chairside.restoration.reasons;
  const toothOf = (written: string) => {
    const tooth = parseTooth(written, visit.toothNotation === 'universal' ? 'universal' : 'iso');
    return tooth === undefined ? written : formatTooth(tooth, notation);
  };
  return (
    <table className={css.table}>
      <thead>
        <tr>
          <th scope="col">{words.restoration}</th>
          <th scope="col">{words.own}</th>
          <th scope="col">{words.shared}</th>
          <th scope="col">{words.total}</th>
        </tr>
      </thead>
      <tbody>
        {visit.restorations.map((each) => (
          <tr key={each.id}>
            <th scope="row">
              {toothOf(each.tooth)} {each.surfaces}
              <small>{[reasons[each.reason] ?? each.reason, each.template.name].join(', ')}</small>
            </th>
            <td>
              <Money value={each.cost.own} />
            </td>
            <td>
              <Money value={each.cost.shared} />
            </td>
            <td>
              <Money value={each.cost.total} />
            </td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" colSpan={3}>
            {words.sum}
          </th>
          <td>
            <Money value={visit.materialCost} />
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

/** Back out again, for whoever may reverse a visit. */
function Undo({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const [asking, setAsking] = useState(false);
  const { book } = useBooking({
    send: (note: string, key) => reverseVisit(visit.id, note, key),
    changes: CHANGED,
  });
  const words = t.chairside.booked;
  if (!may('visits.reverse') || visit.reversal) return null;
  return (
    <>
      <Button variant="default" size="lg" onClick={() => setAsking(true)}>
        {words.undo}
      </Button>
      <ConfirmReversal
        opened={asking}
        onClose={() => setAsking(false)}
        what={words.undoWhat(visit.chartReference, format.money(visit.materialCost))}
        reverse={async (note) => {
          await book(note);
          notify({ tone: 'done', text: words.undone });
        }}
      />
    </>
  );
}
