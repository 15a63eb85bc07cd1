import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { ProblemError } from '../../api/problem.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { type LotTrace, lotTraceQuery } from './api/trace-lot.js';
import { BalanceSection } from './balance-section.js';
import { HoldDialog } from './hold-dialog.js';
import { HoldHistory } from './hold-history.js';
import { LotHead } from './lot-head.js';
import { MovesSection, OthersSection } from './movements-sections.js';
import { OnHandSection } from './on-hand-section.js';
import { PathSection } from './path-drawing.js';
import { PrintHead } from './print-head.js';
import { CorrectionsSection, KitsSection } from './relations-section.js';
import { ShortfallsSection } from './shortfalls-section.js';
import { VisitsSection } from './visits-section.js';

const route = getRouteApi('/in/trace');

/** Forward: what became of a lot. */
export function LotTraceView({ lotId }: { readonly lotId: string }) {
  const t = useText();
  const { rows, cursor } = route.useSearch();
  const trace = useQuery(lotTraceQuery(lotId, Number(rows ?? '50'), cursor));
  if (trace.error instanceof ProblemError && trace.error.problem.status === 404) {
    return <EmptyState title={t.trace.gone} hint={t.trace.nothingHint} />;
  }
  return (
    <Loaded query={trace}>
      {(data) => <Everything trace={data} stale={trace.isPlaceholderData} />}
    </Loaded>
  );
}

interface Props {
  readonly trace: LotTrace;
  readonly stale: boolean;
}

function Everything({ trace, stale }: Props) {
  return (
    <>
      <PrintHead what="lot" />
      <LotHead trace={trace} />
      <PathSection trace={trace} />
      <OnHandSection trace={trace} />
      <VisitsSection trace={trace} stale={stale} />
      <ShortfallsSection trace={trace} />
      <KitsSection lot={trace.lot} />
      <CorrectionsSection lot={trace.lot} />
      <BalanceSection trace={trace} />
      <OthersSection trace={trace} />
      <MovesSection trace={trace} />
      <HoldHistory lot={trace.lot} />
      <HoldDialog key={trace.lot.status} lot={trace.lot} />
      <Caution />
    </>
  );
}
