import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay, useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Dialog } from '../../ui/dialog.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import { Day, Moment, Money } from '../../ui/values.js';
import { type FeeHistory, type FeeVersion, feeQuery } from './api/list-fees.js';
import { ChangeFeeForm } from './fee-form.js';
import css from './fees.module.css';
import { usePrecise } from './use-precise.js';
import { useUsedFor } from './used-for.js';
import { VersionForm } from './version-form.js';

const route = getRouteApi('/in/setup/fees/$feeId');

export function FeeScreen() {
  const w = useText().fees;
  const { feeId } = route.useParams();
  const fee = useQuery(feeQuery(feeId));
  return (
    <>
      <Link className={`${css.back ?? ''} tb-screen-only`} to="/setup/fees" search={{}}>
        {w.back}
      </Link>
      <Loaded query={fee}>{(data) => <Sheet fee={data} />}</Loaded>
    </>
  );
}

function Sheet({ fee }: { readonly fee: FeeHistory }) {
  const t = useText();
  const w = t.fees;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const open = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }) });
  const close = () => open({ edit: undefined, new: undefined });
  const write = may('pricing.write');
  return (
    <>
      <PageHead title={fee.code} lead={fee.name}>
        {write && (
          <>
            <Button onClick={() => open({ new: '1' })}>{w.newVersion}</Button>
            <Button variant="default" onClick={() => open({ edit: '1' })}>
              {t.setup.change}
            </Button>
          </>
        )}
      </PageHead>
      <Facts fee={fee} />
      <Versions fee={fee} />
      <Dialog
        title={w.versionTitle(fee.code)}
        size="lg"
        opened={write && search.new !== undefined}
        onClose={close}
      >
        <VersionForm fee={fee} onClose={close} />
      </Dialog>
      <Dialog
        title={t.setup.changeOf(fee.code)}
        size="xl"
        opened={write && search.edit !== undefined}
        onClose={close}
      >
        <ChangeFeeForm fee={fee} onClose={close} />
      </Dialog>
    </>
  );
}

function Facts({ fee }: { readonly fee: FeeHistory }) {
  const t = useText();
  const w = t.fees;
  const usedFor = useUsedFor();
  return (
    <div className={css.facts}>
      <Figures>
        <Figure label={w.today} large>
          {fee.current === null ? w.noPrice : <Money value={fee.current.fee} />}
        </Figure>
        <Figure label={w.columns.feeClass}>{fee.feeClass ?? w.noClass}</Figure>
        <Figure label={w.columns.usedFor}>{usedFor(fee)}</Figure>
      </Figures>
      {!fee.active && <StatusMark tone="quiet">{t.setup.state.retired}</StatusMark>}
    </div>
  );
}

type Standing = 'counts' | 'later' | 'past' | 'replaced';

/** The service lists the one that counts of a day first. */
function standingOf(fee: FeeHistory, version: FeeVersion, today: string): Standing {
  if (version.id === fee.current?.id) return 'counts';
  const first = fee.versions.find(({ validFrom }) => validFrom === version.validFrom);
  if (first?.id !== version.id) return 'replaced';
  return version.validFrom > today ? 'later' : 'past';
}

const TONES: Readonly<Record<Standing, Tone>> = {
  counts: 'good',
  later: 'accent',
  past: 'quiet',
  replaced: 'quiet',
};

function Versions({ fee }: { readonly fee: FeeHistory }) {
  const w = useText().fees;
  const { today } = useSession();
  const columns: Column<FeeVersion>[] = [
    {
      id: 'from',
      head: w.versionColumns.from,
      cell: ({ validFrom }) => <Day value={validFrom} />,
    },
    {
      id: 'state',
      head: w.versionColumns.state,
      cell: (version) => {
        const standing = standingOf(fee, version, today);
        return <StatusMark tone={TONES[standing]}>{w.standing[standing]}</StatusMark>;
      },
    },
    {
      id: 'made',
      head: w.versionColumns.made,
      cell: (version) => <Made version={version} />,
    },
    {
      id: 'recorded',
      head: w.versionColumns.recorded,
      wideOnly: true,
      cell: ({ recordedAt }) => (
        <span className={css.quiet}>
          <Moment value={recordedAt} />
        </span>
      ),
    },
    {
      id: 'fee',
      head: w.versionColumns.fee,
      align: 'end',
      cell: ({ fee: price }) => <Money value={price} />,
    },
  ];
  return (
    <Section title={w.versions} hint={w.versionsHint}>
      <div className={css.table}>
        <DataTable
          label={w.versions}
          columns={columns}
          rows={fee.versions}
          rowKey={({ id }) => id}
          marked={fee.current?.id}
        />
      </div>
    </Section>
  );
}

function Made({ version: { points, pointValue, factor } }: { readonly version: FeeVersion }) {
  const w = useText().fees;
  const { number } = usePrecise();
  if (points === null || pointValue === null || factor === null) {
    return <span className={css.quiet}>{w.madeAmount}</span>;
  }
  return <>{w.product(number(points), number(pointValue), number(factor))}</>;
}
