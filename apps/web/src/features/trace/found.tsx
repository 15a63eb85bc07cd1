import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { type Found as Answer, findQuery } from './api/find.js';
import css from './found.module.css';
import { LotList } from './lot-list.js';
import { DamagedSection } from './relations-section.js';

const route = getRouteApi('/in/trace');

/** Says what the typed words are: leads on when they are one thing, asks when they are several. */
export function Found({ words }: { readonly words: string }) {
  const found = useQuery(findQuery(words));
  return <Loaded query={found}>{(answer) => <Ways words={words} found={answer} />}</Loaded>;
}

interface Props {
  readonly words: string;
  readonly found: Answer;
}

function Ways({ words, found }: Props) {
  const t = useText();
  const navigate = route.useNavigate();
  const { lots, chart, damaged } = found;
  const [first] = lots;
  const alone = damaged.length === 0;
  const onlyLot = alone && lots.length === 1 && chart === undefined ? first?.id : undefined;
  const onlyChart = alone && lots.length === 0 ? chart : undefined;
  useEffect(() => {
    if (onlyLot !== undefined)
      void navigate({ search: (old) => ({ ...old, q: words, lotId: onlyLot }), replace: true });
    if (onlyChart !== undefined)
      void navigate({ search: (old) => ({ ...old, q: words, chart: onlyChart }), replace: true });
  }, [onlyLot, onlyChart, words, navigate]);
  if (onlyLot !== undefined || onlyChart !== undefined) return null;
  if (first === undefined && chart === undefined && alone) {
    return <Nothing words={words} found={found} />;
  }
  return (
    <>
      <p role="status" className={css.said}>
        {lots.length + damaged.length === 1 && chart === undefined
          ? t.trace.damaged.only(words)
          : t.trace.several(words)}
      </p>
      {lots.length > 0 && (
        <Section title={t.trace.chooseLots}>
          <LotList lots={lots} q={words} more={found.more} />
        </Section>
      )}
      <DamagedSection damaged={damaged} />
      {chart !== undefined && (
        <Section title={t.trace.chooseChart}>
          <p className={css.chart}>
            <Link to="/trace" search={{ q: words, chart }}>
              {t.trace.openChart(chart)}
            </Link>
          </p>
        </Section>
      )}
    </>
  );
}

/** Nothing found is an answer: it says what was looked for, and what comes close. */
function Nothing({ words, found }: Props) {
  const t = useText();
  const { searched } = t.trace;
  return (
    <div role="status">
      <EmptyState title={t.trace.nothing(words)} hint={t.trace.nothingHint}>
        <div className={css.searched}>
          <p>{searched.where}</p>
          <ul>
            <li>
              {`${searched.lots}: ${found.begins.length === 0 ? searched.none : searched.below}`}
            </li>
            <li>{`${searched.charts}: ${searched.none}`}</li>
          </ul>
        </div>
      </EmptyState>
      {found.begins.length > 0 && (
        <Section title={t.trace.begins}>
          <LotList lots={found.begins} q={words} more={found.more} />
        </Section>
      )}
    </div>
  );
}
