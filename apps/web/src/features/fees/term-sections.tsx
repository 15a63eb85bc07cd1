import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useMay, useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Section } from '../../ui/section.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import { Day, Money } from '../../ui/values.js';
import { allFeesQuery, type Fee } from './api/list-fees.js';
import type { Plan } from './api/plans.js';
import css from './fees.module.css';
import { meaningOfTerm } from './meaning.js';
import { ShareSentence } from './share-sentence.js';
import { standingOf, type Term } from './terms.js';
import { useCoin } from './use-coin.js';
import { usePrecise } from './use-precise.js';

const route = getRouteApi('/in/setup/plans/$planId');

interface Props {
  readonly plan: Plan;
}

/** What a plan says about single fees and about classes, each with what it means in money. */
export function TermSections({ plan }: Props) {
  const w = useText().plans;
  const fees = useQuery(allFeesQuery()).data?.items ?? [];
  const byName = (a: Term, b: Term) =>
    (a.feeCode ?? a.feeClass ?? '').localeCompare(b.feeCode ?? b.feeClass ?? '');
  const ofFees = plan.terms.filter(({ feeId }) => feeId !== null).sort(byName);
  const ofClasses = plan.terms.filter(({ feeId }) => feeId === null).sort(byName);
  return (
    <>
      <Section title={w.terms} hint={w.termsHint}>
        {plan.terms.length === 0 ? (
          <EmptyState title={w.termEmpty} hint={w.termEmptyHint} />
        ) : (
          <TermTable plan={plan} fees={fees} terms={ofFees} about="fee" />
        )}
      </Section>
      <Section title={w.classTerms} hint={w.classTermsHint}>
        <TermTable plan={plan} fees={fees} terms={ofClasses} about="class" />
        <AddForClass />
      </Section>
      {plan.terms.length > 0 && <p className={css.rowHint}>{w.rowHint}</p>}
    </>
  );
}

function AddForClass() {
  const w = useText().plans;
  const may = useMay();
  const navigate = route.useNavigate();
  if (!may('pricing.write')) return null;
  return (
    <Button
      variant="default"
      className={`${css.add ?? ''} tb-screen-only`}
      onClick={() =>
        void navigate({ search: (old) => ({ ...old, new: 'class' as const }), resetScroll: false })
      }
    >
      {w.addClassTerm}
    </Button>
  );
}

interface TableProps extends Props {
  readonly fees: readonly Fee[];
  readonly terms: readonly Term[];
  readonly about: 'fee' | 'class';
}

function TermTable({ plan, fees, terms, about }: TableProps) {
  const w = useText().plans;
  const columns = useColumns(plan, fees, about);
  if (terms.length === 0) {
    return <p className={css.note}>{about === 'fee' ? w.noneOfFees : w.noneOfClasses}</p>;
  }
  return (
    <div className={css.table}>
      <DataTable
        label={about === 'fee' ? w.terms : w.classTerms}
        columns={columns}
        rows={terms}
        rowKey={({ id }) => id}
      />
    </div>
  );
}

const TONES: Readonly<Record<ReturnType<typeof standingOf>, Tone>> = {
  counts: 'good',
  later: 'accent',
  replaced: 'quiet',
};

function useColumns(plan: Plan, fees: readonly Fee[], about: 'fee' | 'class'): Column<Term>[] {
  const w = useText().plans;
  const { today } = useSession();
  const heads = w.termColumns;
  const amounts: Column<Term>[] = [
    { id: 'allowed', head: heads.allowed, align: 'end', cell: (term) => said(term.allowedFee) },
    { id: 'paid', head: heads.alternate, align: 'end', cell: (term) => said(term.alternateFee) },
  ];
  return [
    {
      id: 'about',
      head: about === 'fee' ? heads.fee : heads.feeClass,
      cell: (term) => <About term={term} fees={fees} />,
    },
    {
      id: 'from',
      head: heads.from,
      cell: (term) => {
        const standing = standingOf(term, plan.terms, today);
        return (
          <>
            <Day value={term.validFrom} />
            <span className={css.under}>
              <StatusMark tone={TONES[standing]}>{w.standing[standing]}</StatusMark>
            </span>
          </>
        );
      },
    },
    ...(about === 'fee' ? amounts : []),
    { id: 'covers', head: heads.covers, cell: (term) => <Covers term={term} /> },
    {
      id: 'money',
      head: heads.money,
      cell: (term) => <InMoney plan={plan} term={term} fees={fees} about={about} />,
    },
  ];
}

function said(amount: string | null): ReactNode {
  return amount === null ? <span className={css.quiet}>–</span> : <Money value={amount} />;
}

function About({ term, fees }: { readonly term: Term; readonly fees: readonly Fee[] }) {
  if (term.feeId === null) return <strong>{term.feeClass}</strong>;
  return (
    <>
      <Link className={css.name} to="/setup/fees/$feeId" params={{ feeId: term.feeId }} search={{}}>
        {term.feeCode}
      </Link>
      <span className={css.under}>{fees.find(({ id }) => id === term.feeId)?.name}</span>
    </>
  );
}

function Covers({ term }: { readonly term: Term }) {
  const t = useText();
  const w = t.plans;
  const precise = usePrecise();
  if (term.coverage === null) return <span className={css.quiet}>{w.nothingSaid}</span>;
  if (/^0(\.0+)?$/.test(term.coverage)) return <>{w.coversNothing}</>;
  const reasons = w.and(term.reasons.map((reason) => t.fees.reasons[reason as 'decay']));
  return (
    <>
      {w.covers(precise.percent(term.coverage), reasons)}
      <span className={css.under}>
        {term.deductibleApplies ? w.afterDeductible : w.withoutDeductible}
      </span>
      {term.cosmeticNote !== null && (
        <span className={css.under}>{w.cosmeticSays(term.cosmeticNote)}</span>
      )}
    </>
  );
}

interface MoneyProps {
  readonly plan: Plan;
  readonly term: Term;
  readonly fees: readonly Fee[];
  readonly about: 'fee' | 'class';
}

function InMoney({ plan, term, fees, about }: MoneyProps) {
  const w = useText().plans;
  const { today } = useSession();
  const { step } = useCoin();
  if (standingOf(term, plan.terms, today) === 'replaced') {
    return <span className={css.quiet}>{w.replacedBy}</span>;
  }
  const meaning = meaningOfTerm(plan, term, fees, { today, step });
  if (meaning === undefined) return <span className={css.quiet}>{w.noExample}</span>;
  return (
    <p className={css.money}>
      <ShareSentence meaning={meaning} named={about === 'class'} />
    </p>
  );
}
