import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Money } from '../../ui/values.js';
import { type Explained, explainedQuery } from './api/explain-cost.js';
import { CostedLines } from './costed-lines.js';
import { HowItAddsUp } from './how-it-adds-up.js';
import { RankedBars } from './ranked-bars.js';
import css from './restoration-screen.module.css';
import { rankedBy } from './sums.js';

const route = getRouteApi('/in/costs/restorations/$restorationId');

/** Where the cost of one restoration comes from, down to the delivery and its price. */
export function RestorationScreen() {
  const { restorationId } = route.useParams();
  const explained = useQuery(explainedQuery(restorationId));
  return <Loaded query={explained}>{(one) => <Restoration one={one} />}</Loaded>;
}

function Restoration({ one }: { readonly one: Explained }) {
  const t = useText();
  const words = t.costs.one;
  return (
    <>
      <p className="tb-screen-only">
        <Link to="/costs/restorations">{words.back}</Link>
      </p>
      <Head one={one} />
      {one.reversed && (
        <p>
          <StatusMark tone="danger">{words.reversed}</StatusMark>
        </p>
      )}
      {one.estimated && (
        <p className={css.estimated}>
          <StatusMark tone="caution">{words.estimated}</StatusMark>
        </p>
      )}
      <div className={css.figures}>
        <Figures>
          <Figure label={words.cost} large>
            <Money value={one.cost} />
          </Figure>
          <Figure label={words.own} large>
            <Money value={one.ownCost} />
          </Figure>
          <Figure label={words.shared} large>
            <Money value={one.sharedCost} />
          </Figure>
          {one.attempts > 1 && (
            <Figure label={words.retakes} large tone="caution">
              <Money value={one.retakeCost} />
            </Figure>
          )}
          <Figure label={words.visitCost} large>
            <Money value={one.visitCost} />
          </Figure>
        </Figures>
      </div>
      <CostedLines title={words.ownLines} lines={one.ownLines} />
      <CostedLines
        title={words.sharedLines}
        hint={words.keys[one.costShareKey]}
        lines={one.sharedLines}
      />
      <div className={css.ends}>
        <HowItAddsUp one={one} />
        <Section title={words.categories}>
          <RankedBars
            label={words.categories}
            rows={rankedBy(one.categories, (row) => row.category)}
          />
        </Section>
      </div>
      <Caution />
    </>
  );
}

function Head({ one }: { readonly one: Explained }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const words = t.costs.one;
  const what = words.lead(
    t.costs.reasons[one.reason],
    one.template.name,
    one.template.version,
    one.dentist.name,
  );
  return (
    <PageHead
      title={words.title(one.tooth, one.surfaces)}
      lead={
        <>
          {format.day(one.visitedOn)}, {words.chart} {one.chartReference}. {what}
        </>
      }
    >
      {may('visits.read') && (
        <Link to="/visits/$visitId" params={{ visitId: one.visitId }}>
          {words.visit}
        </Link>
      )}
      {may('trace.read') && (
        <Link to="/trace" search={{ visitId: one.visitId }}>
          {words.trace}
        </Link>
      )}
      <PrintButton />
    </PageHead>
  );
}
