import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Found } from './found.js';
import { LotTraceView } from './lot-trace.js';
import { TraceForm } from './trace-form.js';
import css from './trace-screen.module.css';
import { ChartTraceView, VisitTraceView } from './visit-traces.js';

const route = getRouteApi('/in/trace');

/** From a lot to everybody who may have got it, and back. */
export function TraceScreen() {
  const t = useText();
  const { q, lotId, visitId, chart } = route.useSearch();
  const traced = lotId ?? visitId ?? chart;
  return (
    <div className={css.trace}>
      <div className="tb-screen-only">
        <PageHead title={t.trace.title} lead={t.trace.lead}>
          {traced !== undefined && <PrintButton />}
        </PageHead>
      </div>
      <TraceForm started={(q ?? traced) !== undefined} />
      <Answer />
    </div>
  );
}

function Answer() {
  const t = useText();
  const { q, lotId, visitId, chart } = route.useSearch();
  if (lotId !== undefined) return <LotTraceView lotId={lotId} />;
  if (visitId !== undefined) return <VisitTraceView visitId={visitId} />;
  if (chart !== undefined) return <ChartTraceView reference={chart} />;
  if (q !== undefined) return <Found key={q} words={q} />;
  return <EmptyState title={t.trace.startTitle} hint={t.trace.startHint} />;
}
