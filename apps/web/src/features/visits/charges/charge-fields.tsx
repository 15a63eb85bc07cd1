import { Link } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { DecimalField, SearchSelectField, SelectField } from '../../../ui/fields.js';
import { FieldGroup } from '../../../ui/form.js';
import { StatusMark } from '../../../ui/status-mark.js';
import type { Visit } from '../api/get-visit.js';
import type { Charge } from './api/list-charges.js';
import type { Fee } from './api/list-fees.js';
import { type ChargeField, type ChargeRow, SHARES, sumOf } from './charge-draft.js';
import css from './charges.module.css';
import { fittingFees, linkedFee } from './fee-choice.js';
import type { Charges } from './use-charges.js';
import type { WorkOut } from './use-work-out.js';

interface Of {
  readonly made: Visit['restorations'][number];
  readonly i: number;
  readonly fees: readonly Fee[];
  readonly plans: readonly { readonly id: string; readonly name: string }[];
  readonly chart: string;
}

interface Props {
  readonly of: Of;
  /** What was recorded and counts. */
  readonly charge: Charge | undefined;
  readonly charges: Charges;
  readonly workOut: WorkOut;
}

/** Fee, plan, and who pays what of one restoration. */
export function ChargeFields({ of, charge, charges, workOut }: Props) {
  const t = useText();
  const { currency } = useFormat();
  const words = t.visitCharges;
  const { made, i } = of;
  const row = charges.form.values.charges[i];
  if (!row) return null;
  const reasons: Readonly<Record<string, string>> = t.visits.reasons;
  const isCosmetic = made.reason === 'cosmetic';
  const about = words.about(reasons[made.reason] ?? made.reason, made.template.name);
  const field = (name: ChargeField) => {
    const path = `charges[${i}].${name}`;
    return {
      name: path,
      value: row[name],
      error: charges.form.errorAt(path) ?? workOut.errorAt(path),
      onValue: (value: string) => {
        charges.setField(i, name, value);
        workOut.forget();
      },
    };
  };
  const shares = row.planId === '' ? SHARES.filter((name) => name !== 'planPays') : SHARES;
  const plan = field('planId');
  return (
    <FieldGroup title={`${made.tooth} ${made.surfaces}, ${about}`}>
      {isCosmetic && <p className={css.quiet}>{words.cosmeticHint}</p>}
      <div className={css.fields}>
        <FeeChoice of={of} row={row} charge={charge} charges={charges} workOut={workOut} />
        <DecimalField label={words.columns.fee} unit={currency} {...field('fee')} />
        <SelectField
          label={words.plan}
          empty={words.noPlan}
          choices={planChoices(of, charge)}
          {...plan}
        />
      </div>
      {plan.error === words.untold && (
        <Link to="/setup/balances" search={{ chart: of.chart, new: '1' }}>
          {words.enterLeft}
        </Link>
      )}
      <div className={css.fields}>
        {shares.map((name) => (
          <DecimalField key={name} label={words.columns[name]} {...field(name)} />
        ))}
        {row.planId !== '' && (
          <DecimalField label={words.deductibleUsed} {...field('deductibleUsed')} />
        )}
      </div>
      <Sum row={row} />
    </FieldGroup>
  );
}

function planChoices({ plans }: Of, charge: Charge | undefined) {
  const own = charge?.plan;
  const known = plans.map(({ id, name }) => ({ value: id, label: name }));
  if (!own || plans.some(({ id }) => id === own.id)) return known;
  return [...known, { value: own.id, label: own.name }];
}

/** Which fee of the list it is, where there is a choice. */
function FeeChoice({ of, row, charge, charges, workOut }: Props & { readonly row: ChargeRow }) {
  const words = useText().visitCharges;
  const { money } = useFormat();
  const fitting = fittingFees(of.fees, of.made);
  const path = `charges[${of.i}].feeCode`;
  const choices = fitting.flatMap(({ code, name, current }) =>
    current ? [{ value: code, label: words.feeOf(code, name, money(current.fee)) }] : [],
  );
  const own = charge?.feeCode;
  if (own && !fitting.some(({ code }) => code === own)) choices.push({ value: own, label: own });
  const linked = linkedFee(of.fees, of.made);
  if (choices.length === 0 || (choices.length === 1 && linked)) return null;
  const props = {
    label: words.feeCode,
    name: path,
    value: row.feeCode,
    error: charges.form.errorAt(path),
    choices,
    // Without a code the service takes the fee of the template, so only one without has none.
    ...(linked ? {} : { empty: words.noCode }),
    onValue: (code: string) => {
      charges.setFee(of.i, code, fitting.find((fee) => fee.code === code)?.current?.fee);
      workOut.forget();
    },
  };
  return choices.length > 20 ? <SearchSelectField {...props} /> : <SelectField {...props} />;
}

/** What plan, patient and write-off come to, as it is typed. */
function Sum({ row }: { readonly row: ChargeRow }) {
  const words = useText().visitCharges;
  const { money } = useFormat();
  const sum = sumOf(row);
  if (!sum || row.fee.trim() === '') return <output className={css.quiet}>{words.noSum}</output>;
  const { over } = sum;
  const parts = words.sum(money(sum.sum));
  const less = over.startsWith('-');
  return (
    <output className={css.sum}>
      {over === '0.00' ? (
        <StatusMark tone="good">{`${parts} ${words.fits}`}</StatusMark>
      ) : (
        <StatusMark tone="caution">
          {`${parts} ${less ? words.tooLittle(money(over.slice(1))) : words.tooMuch(money(over))}`}
        </StatusMark>
      )}
    </output>
  );
}
