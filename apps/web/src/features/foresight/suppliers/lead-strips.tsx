import { useText } from '../../../text/text-provider.js';
import { type Axis, axisTo, ONE } from '../../../ui/chart/axis.js';
import css from '../../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../../ui/chart/chart-key.js';
import { StripAxis, StripRow, stripX } from '../../../ui/chart/strips.js';
import { Section } from '../../../ui/section.js';
import type { Supplier } from '../api/compare-suppliers.js';

/** How long each supplier takes: fastest to slowest, middle to nine in ten, and what it states. */
export function LeadStrips({ suppliers }: { readonly suppliers: readonly Supplier[] }) {
  const words = useText().foresight.suppliers.times;
  const days = suppliers.flatMap(({ lead }) => [lead.stated, lead.slowest ?? 0]);
  const axis = axisTo(BigInt(Math.ceil(Math.max(...days, 1))) * ONE, { most: 8, finest: ONE });
  return (
    <Section title={words.title} hint={words.hint}>
      <ChartKey
        entries={[
          { words: words.key.whisker, shapes: [{ look: css.whisker, path: KEY.whisker }] },
          {
            words: words.key.band,
            shapes: [
              { look: css.band, path: 'M4 1H26V11H4Z' },
              { look: css.middle, path: 'M4 0V12' },
            ],
          },
          { words: words.key.stated, shapes: [{ look: css.dashed, path: KEY.tick }] },
        ]}
      />
      {suppliers.map(({ supplier, lead }) => (
        <StripRow
          key={supplier.id}
          name={supplier.name}
          end={<LeadWords lead={lead} />}
          words
          axis={axis}
        >
          <LeadStrip lead={lead} axis={axis} />
        </StripRow>
      ))}
      <StripAxis axis={axis} unit={words.unit} words />
    </Section>
  );
}

function LeadWords({ lead }: { readonly lead: Supplier['lead'] }) {
  const { stated, median, p90, complete, open } = lead;
  const words = useText().foresight.suppliers.times;
  return median === null || p90 === null
    ? words.onlyStated(stated, open)
    : words.seen({ median, p90, complete, open, stated });
}

interface StripProps {
  readonly lead: Supplier['lead'];
  readonly axis: Axis;
}

function LeadStrip({ lead, axis }: StripProps) {
  const { fastest, slowest, median, p90, stated } = lead;
  // Days may be half ones; a share of the axis is all that a picture needs.
  const x = (days: number) => stripX(axis, BigInt(Math.round(days * Number(ONE))));
  const seen = fastest !== null && slowest !== null && median !== null && p90 !== null;
  return (
    <>
      {seen && (
        <>
          <path
            className={css.whisker}
            d={`M${x(fastest)} 15H${x(slowest)}M${x(fastest)} 11v8M${x(slowest)} 11v8`}
          />
          <path
            className={css.band}
            d={`M${x(median)} 9H${Math.max(x(p90), x(median) + 3)}V21H${x(median)}Z`}
          />
          <path className={css.middle} d={`M${x(median)} 5V25`} />
        </>
      )}
      <path className={css.dashed} d={`M${x(stated)} 2V28`} />
    </>
  );
}
