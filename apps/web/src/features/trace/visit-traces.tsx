import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { ProblemError } from '../../api/problem.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { chartTraceQuery, visitTraceQuery } from './api/trace-visits.js';
import head from './lot-head.module.css';
import { PrintHead } from './print-head.js';
import { VisitUses } from './visit-uses.js';

const route = getRouteApi('/in/trace');

/** Backward: every visit of a chart, with every lot that was used. */
export function ChartTraceView({ reference }: { readonly reference: string }) {
  const t = useText();
  const { q, cursor } = route.useSearch();
  const navigate = route.useNavigate();
  const trace = useQuery(chartTraceQuery(reference, cursor));
  const words = t.trace.back;
  if (trace.error instanceof ProblemError && trace.error.problem.status === 404) {
    return <EmptyState title={words.noVisit(reference)} hint={t.trace.nothingHint} />;
  }
  const turn = (next: string | undefined) =>
    void navigate({ search: (old) => ({ ...old, cursor: next }) });
  return (
    <Loaded query={trace}>
      {(data) => (
        <>
          <PrintHead what="chart" />
          <header className={head.head}>
            {q !== undefined && (
              <p role="status" className={`${head.quiet ?? ''} tb-screen-only`}>
                {t.trace.foundChart(data.chartReference)}
              </p>
            )}
            <h2 className={head.title}>{words.chart(data.chartReference)}</h2>
            <p className={head.quiet}>{words.lead}</p>
          </header>
          {data.items.map((visit) => (
            <VisitUses key={visit.visitId} visit={visit} />
          ))}
          <div className="tb-screen-only">
            {cursor !== undefined && (
              <Button variant="default" mr="md" onClick={() => turn(undefined)}>
                {t.ui.firstPage}
              </Button>
            )}
            {data.nextCursor !== null && (
              <Button variant="default" onClick={() => turn(data.nextCursor ?? undefined)}>
                {t.ui.nextPage}
              </Button>
            )}
          </div>
          <Caution />
        </>
      )}
    </Loaded>
  );
}

/** Backward: every lot of one visit. */
export function VisitTraceView({ visitId }: { readonly visitId: string }) {
  const t = useText();
  const format = useFormat();
  const trace = useQuery(visitTraceQuery(visitId));
  const words = t.trace.back;
  return (
    <Loaded query={trace}>
      {(visit) => (
        <>
          <PrintHead what="visit" />
          <header className={head.head}>
            <h2 className={head.title}>
              {words.visit(visit.chartReference, format.day(visit.visitedOn))}
            </h2>
            <p className={head.quiet}>{words.visitLead}</p>
            <p className="tb-screen-only">
              <Link to="/trace" search={{ chart: visit.chartReference }}>
                {words.wholeChart}
              </Link>
            </p>
          </header>
          <VisitUses visit={visit} />
          <Caution />
        </>
      )}
    </Loaded>
  );
}
