import { formatMoney } from '#lib/measure';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DateField, DecimalField, SelectField } from '../../ui/fields.js';
import { FieldRow } from '../../ui/form.js';
import type { FieldProps } from '../../ui/use-form.js';
import css from './fees.module.css';
import { feeByPoints, roundedTooEarly } from './points.js';
import { type PriceValues, pointsOf } from './price-values.js';
import { useCoin } from './use-coin.js';
import { usePrecise } from './use-precise.js';

interface Props {
  readonly values: PriceValues;
  readonly field: (name: keyof PriceValues) => FieldProps;
}

/** From which day on, and an amount or the three parts of a tariff with what they make. */
export function PriceFields({ values, field }: Props) {
  const w = useText().fees;
  const { currency } = useFormat();
  return (
    <>
      <FieldRow>
        <DateField label={w.from} {...field('validFrom')} />
        <SelectField
          label={w.how}
          choices={(['amount', 'points'] as const).map((how) => ({
            value: how,
            label: w.hows[how],
          }))}
          {...field('how')}
        />
      </FieldRow>
      {values.how === 'amount' ? (
        <DecimalField label={w.amount} unit={currency} {...field('fee')} />
      ) : (
        <>
          <FieldRow>
            <DecimalField label={w.points} {...field('points')} />
            <DecimalField label={w.pointValue} unit={currency} {...field('pointValue')} />
            <DecimalField label={w.factor} {...field('factor')} />
          </FieldRow>
          <PointsResult values={values} />
        </>
      )}
    </>
  );
}

/** What the parts make, every digit of it, and where it is rounded. */
function PointsResult({ values }: { readonly values: PriceValues }) {
  const w = useText().fees;
  const { money } = useFormat();
  const precise = usePrecise();
  const { step } = useCoin();
  const parts = pointsOf(values);
  const made = feeByPoints(parts, step);
  const early = roundedTooEarly(parts, step);
  const product = w.product(
    ...([parts.points, parts.pointValue, parts.factor].map((part) =>
      part === '' ? '…' : precise.number(part),
    ) as [string, string, string]),
  );
  return (
    <div className={css.words} aria-live="polite">
      {made === undefined ? (
        <p className={css.quiet}>{w.pointsHint}</p>
      ) : (
        <>
          <p>{w.makes(product, precise.number(made.exact))}</p>
          <p className={css.result}>
            <strong>{money(formatMoney(made.fee))}</strong>
            <span>{made.rounded ? w.roundedOnce : w.notRounded}</span>
          </p>
          {early !== undefined && early !== made.fee && (
            <p className={css.quiet}>{w.tooEarly(money(formatMoney(early)))}</p>
          )}
        </>
      )}
    </div>
  );
}
