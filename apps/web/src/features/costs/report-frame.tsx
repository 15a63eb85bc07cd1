import type { ReactNode } from 'react';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { PageHead } from '../../ui/page-head.js';
import { CostsNav } from './costs-nav.js';
import { ReportFiles } from './report-files.js';

type Screen = keyof ReturnType<typeof useText>['costs']['leads'];

interface Props {
  readonly screen: Screen;
  /** As the service calls it. */
  readonly report: string;
  /** What the service is asked for; its files are asked for the same. */
  readonly asked: Readonly<Record<string, string | undefined>>;
  /** Goes along to the other screens. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly children: ReactNode;
}

/** A report: what it says, its files, the way to the others, and the caution at its end. */
export function ReportFrame({ screen, report, asked, from, to, children }: Props) {
  const t = useText();
  return (
    <>
      <PageHead title={t.costs.titles[screen]} lead={t.costs.leads[screen]}>
        <ReportFiles report={report} asked={asked} />
      </PageHead>
      <CostsNav from={from} to={to} />
      {children}
      <Caution />
    </>
  );
}
