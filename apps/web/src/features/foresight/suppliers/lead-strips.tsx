import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Section } from '../../../ui/section.js';
import type { Supplier } from '../api/compare-suppliers.js';
import css from './lead-strips.module.css';

const WIDE = 1000;

/** How long each supplier takes: fastest to slowest, middle to nine in ten, and what it states. */
export function LeadStrips({ suppliers }: { readonly suppliers: readonly Supplier[] }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.suppliers.times;
  const longest = suppliers.reduce(
    (most, { lead }) => Math.max(most, lead.stated, lead.slowest ?? 0),
    1,
  );
  const step = Math.max(1, Math.ceil(longest / 8));
  const end = Math.ceil(longest / step) * step;
  const marks = Array.from({ length: end / step + 1 }, (_, i) => i * step);
  const x = (days: number) => (days / end) * WIDE;
  return (
    <Section title={words.title} hint={words.hint}>
      <Key />
      <div>
        {suppliers.map(({ supplier, lead }) => (
          <div key={supplier.id} className={css.row}>
            <span className={css.name}>{supplier.name}</span>
            <svg
              aria-hidden="true"
              className={css.strip}
              viewBox={`0 0 ${WIDE} 30`}
              preserveAspectRatio="none"
            >
              {marks.map((mark) => (
                <path key={mark} className={css.grid} d={`M${x(mark)} 0V30`} />
              ))}
              <Strip lead={lead} x={x} />
            </svg>
            <LeadWords lead={lead} />
          </div>
        ))}
        <div className={css.row} aria-hidden="true">
          <span />
          <div className={css.axis}>
            {marks.map((mark) => (
              <span key={mark} style={{ left: `${(mark / end) * 100}%` }}>
                {format.number(String(mark))}
              </span>
            ))}
          </div>
          <span className={css.unit}>{words.unit}</span>
        </div>
      </div>
    </Section>
  );
}

function LeadWords({ lead }: { readonly lead: Supplier['lead'] }) {
  const t = useText();
  const { stated, median, p90, complete, open } = lead;
  const words = t.foresight.suppliers.times;
  return (
    <span className={css.words}>
      {median === null || p90 === null
        ? words.onlyStated(stated, open)
        : words.seen({ median, p90, complete, open, stated })}
    </span>
  );
}

interface StripProps {
  readonly lead: Supplier['lead'];
  readonly x: (days: number) => number;
}

function Strip({ lead, x }: StripProps) {
  const { fastest, slowest, median, p90, stated } = lead;
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
      <path className={css.stated} d={`M${x(stated)} 2V28`} />
    </>
  );
}

function Key() {
  const t = useText();
  const words = t.foresight.suppliers.times.key;
  return (
    <p className={css.key}>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.whisker} d="M1 6H27M1 2v8M27 2v8" />
        </svg>
        {words.whisker}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.band} d="M4 1H26V11H4Z" />
          <path className={css.middle} d="M4 0V12" />
        </svg>
        {words.band}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.stated} d="M14 0V12" />
        </svg>
        {words.stated}
      </span>
    </p>
  );
}
