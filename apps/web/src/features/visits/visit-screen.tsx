import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
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
import { PrintButton } from '../../ui/print-button.js';
import { Money } from '../../ui/values.js';
import { type Visit, visitQuery } from './api/get-visit.js';
import { reverseVisit } from './api/reverse-visit.js';
import { ChargesSection } from './charges/charges-section.js';
import { RestorationTable } from './restoration-table.js';
import { UsageTable } from './usage-table.js';
import css from './visits.module.css';

const route = getRouteApi('/in/visits/$visitId');
const CHANGED = [
  ['visits'],
  ['stock'],
  ['alerts'],
  ['lots'],
  ['movements'],
  ['reports'],
  ['charges'],
];

/** One visit with everything that can be asked about it. */
export function VisitScreen() {
  const { visitId } = route.useParams();
  const query = useQuery(visitQuery(visitId));
  return <Loaded query={query}>{(visit) => <OneVisit visit={visit} />}</Loaded>;
}

function OneVisit({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const words = t.visits.visit;
  const { dentist, location } = visit;
  return (
    <>
      <PageHead
        title={words.title(visit.chartReference)}
        lead={words.lead(format.day(visit.visitedOn), dentist.name, location.name)}
      >
        <Reverse visit={visit} />
        <PrintButton />
      </PageHead>
      {visit.reversal && (
        <div className={css.reversed}>
          <p className={css.name}>
            {words.reversedBy(visit.reversal.reversedBy, format.instant(visit.reversal.reversedAt))}
          </p>
          <p>{visit.reversal.note}</p>
        </div>
      )}
      <VisitFigures visit={visit} />
      <RestorationTable visit={visit} />
      {may('pricing.read') && <ChargesSection visit={visit} />}
      <UsageTable visit={visit} />
      <Ways visit={visit} />
      <p className={css.quiet}>
        {words.recorded(visit.recordedBy, format.instant(visit.recordedAt))}
      </p>
      <Caution />
    </>
  );
}

function VisitFigures({ visit }: { readonly visit: Visit }) {
  const words = useText().visits.visit;
  const minutes = visit.restorations.reduce((sum, each) => sum + each.minutes, 0);
  const assistants = visit.restorations.flatMap((each) => each.assistantMinutes ?? []);
  return (
    <div className={css.figures}>
      <Figures>
        <Figure label={words.materials} large>
          <Money value={visit.materialCost} />
        </Figure>
        {visit.retakeCost !== '0.00' && (
          <Figure label={words.retakes} large tone="caution">
            <Money value={visit.retakeCost} />
          </Figure>
        )}
        <Figure label={words.minutes} large>
          {words.minutesOf(minutes)}
        </Figure>
        {assistants.length > 0 && (
          <Figure label={words.assistants} large>
            {words.minutesOf(assistants.reduce((sum, each) => sum + each, 0))}
          </Figure>
        )}
      </Figures>
      {visit.withoutAnaesthetic && <p className={css.quiet}>{words.withoutAnaesthetic}</p>}
      {visit.estimated && <p className={css.note}>{words.estimated}</p>}
    </div>
  );
}

function Ways({ visit }: { readonly visit: Visit }) {
  const may = useMay();
  const words = useText().visits.visit;
  return (
    <p className={`${css.ways ?? ''} tb-screen-only`}>
      {may('stock.read') && (
        <Link to="/shelves/movements" search={{ visitId: visit.id }}>
          {words.movements}
        </Link>
      )}
      {may('trace.read') && (
        <Link to="/trace" search={{ visitId: visit.id }}>
          {words.trace}
        </Link>
      )}
      <Link to="/visits">{words.back}</Link>
    </p>
  );
}

function Reverse({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const [asking, setAsking] = useState(false);
  const { book } = useBooking({
    send: (note: string, key) => reverseVisit(visit.id, note, key),
    changes: CHANGED,
  });
  const words = t.visits.visit;
  if (!may('visits.reverse') || visit.reversal) return null;
  return (
    <>
      <Button variant="default" onClick={() => setAsking(true)}>
        {words.reverse}
      </Button>
      <ConfirmReversal
        opened={asking}
        onClose={() => setAsking(false)}
        what={words.reverseWhat(visit.chartReference, format.money(visit.materialCost))}
        reverse={async (note) => {
          await book(note);
          notify({ tone: 'done', text: words.done });
        }}
      />
    </>
  );
}
