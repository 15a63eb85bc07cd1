import { CloseButton, NativeSelect } from '@mantine/core';
import { CAVITY_CLASSES, CAVITY_SIZES, REASONS } from '#lib/dentition';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DecimalField, SelectField, TextField, WholeField } from '../../ui/fields.js';
import type { FieldProps } from '../../ui/use-form.js';
import type { Consumable, Fee, Template } from './api/choices.js';
import { asksForShades } from './check-question.js';
import css from './question-form.module.css';
import { RareFields } from './rare-fields.js';
import { classesOf, MOST_SHADES, type Row } from './row.js';
import { feeFor } from './shades.js';
import type { Question } from './use-question.js';

interface Props {
  readonly row: Row;
  readonly path: string;
  readonly place: number;
  readonly template: Template | undefined;
  readonly choices: {
    readonly templates: readonly { readonly id: string; readonly name: string }[];
    readonly shades: readonly Consumable[];
    readonly fees: readonly Fee[];
  };
  readonly question: Question;
  readonly onChange: (part: Partial<Row>) => void;
  readonly onRemove: (() => void) | undefined;
}

type TextPart = 'tooth' | 'surfaces' | 'templateId' | 'fee' | 'minutes';

/** One planned restoration. */
export function RestorationFields(props: Props) {
  const w = useText().quotes;
  const { row, path, place, question, onChange, onRemove } = props;
  const field = (name: TextPart, clean = (typed: string) => typed): FieldProps => ({
    name: `${path}.${name}`,
    value: row[name],
    onValue: (value) => onChange({ [name]: clean(value) }),
    error: question.form.errorAt(`${path}.${name}`),
  });
  const wrong = question.form.errorAt(path);
  return (
    <fieldset className={css.row} data-row={row.key} aria-label={w.restoration(place)}>
      <div className={css.first}>
        <TextField label={w.tooth} maxLength={3} {...field('tooth')} />
        <TextField
          label={w.surfaces}
          maxLength={6}
          {...field('surfaces', (typed) => typed.toUpperCase())}
        />
        <ReasonField {...props} />
        <TemplateField {...props} field={field('templateId')} />
        <FeeField {...props} field={field('fee')} />
        {onRemove && (
          <CloseButton
            className={css.remove ?? ''}
            size={44}
            aria-label={w.remove(place)}
            onClick={onRemove}
          />
        )}
      </div>
      <div className={css.second}>
        <ShadeField {...props} />
        <CavityFields {...props} />
        <WholeField
          label={w.minutes}
          maxLength={4}
          placeholder={props.template === undefined ? '' : String(props.template.minutes)}
          {...field('minutes')}
        />
      </div>
      <RareFields row={row} path={path} question={question} onChange={onChange} />
      {wrong !== undefined && (
        <p className={css.wrong} role="alert">
          {wrong}
        </p>
      )}
    </fieldset>
  );
}

function ReasonField({ row, path, question, onChange }: Props) {
  const w = useText().quotes;
  return (
    <SelectField
      label={w.reason}
      name={`${path}.reason`}
      value={row.reason}
      error={question.form.errorAt(`${path}.reason`)}
      choices={REASONS.map((value) => ({ value, label: w.reasons[value] }))}
      onValue={(value) => onChange({ reason: REASONS.find((each) => each === value) ?? 'decay' })}
    />
  );
}

function TemplateField({ choices, field }: Props & { readonly field: FieldProps }) {
  const t = useText();
  return (
    <SelectField
      label={t.quotes.template}
      empty={t.ui.choose}
      choices={choices.templates.map(({ id, name }) => ({ value: id, label: name }))}
      {...field}
    />
  );
}

/** What the practice asks stands there greyed until something else is typed. */
function FeeField({ row, choices, field }: Props & { readonly field: FieldProps }) {
  const w = useText().quotes;
  const format = useFormat();
  const own = feeFor(choices.fees, row.templateId, row.reason);
  const amount = own?.current?.fee;
  return (
    <div>
      <DecimalField
        label={w.fee}
        unit={format.currency}
        placeholder={amount === undefined ? '' : format.number(amount)}
        {...field}
      />
      {row.templateId !== '' && (
        <p className={css.under}>
          {amount === undefined ? w.noFee : w.ownFee(own?.code ?? '', format.money(amount))}
        </p>
      )}
    </div>
  );
}

function CavityFields({ row, path, question, onChange }: Props) {
  const w = useText().quotes;
  const fit = classesOf(row, question.notation);
  return (
    <>
      <SelectField
        label={w.cavity}
        name={`${path}.cavityClass`}
        value={row.cavityClass}
        error={question.form.errorAt(`${path}.cavityClass`)}
        empty={w.noCavity}
        choices={fit.map((value) => ({ value, label: value }))}
        onValue={(value) => {
          const cavityClass = CAVITY_CLASSES.find((each) => each === value) ?? '';
          onChange({ cavityClass, classChosen: true });
        }}
      />
      <SelectField
        label={w.size}
        name={`${path}.size`}
        value={row.size}
        error={question.form.errorAt(`${path}.size`)}
        choices={CAVITY_SIZES.map((value) => ({ value, label: w.sizes[value] }))}
        onValue={(value) =>
          onChange({ size: CAVITY_SIZES.find((each) => each === value) ?? 'medium' })
        }
      />
    </>
  );
}

function ShadeField({ row, path, question, template, choices: { shades }, onChange }: Props) {
  const w = useText().quotes;
  const error = question.form.errorAt(`${path}.shades`);
  if (template && !asksForShades(template, row.reason)) {
    return <p className={css.noShades}>{w.noShades}</p>;
  }
  const chosen = shades.filter(({ id }) => row.shades.includes(id));
  const name = ({ name: paste, shade }: Consumable) => `${shade ?? ''} (${paste})`;
  return (
    <div className={css.shades}>
      <NativeSelect
        name={`${path}.shades`}
        label={w.shades}
        value=""
        error={error}
        disabled={row.shades.length >= MOST_SHADES}
        data={[
          { value: '', label: w.addShade },
          ...shades
            .filter(({ id }) => !row.shades.includes(id))
            .map((each) => ({ value: each.id, label: name(each) })),
        ]}
        onChange={(event) => {
          const id = event.currentTarget.value;
          if (id !== '') onChange({ shades: [...row.shades, id] });
        }}
      />
      {chosen.map((each) => (
        <span key={each.id} className={css.chip}>
          {each.shade}
          <CloseButton
            size={36}
            aria-label={w.removeShade(name(each))}
            onClick={() => onChange({ shades: row.shades.filter((id) => id !== each.id) })}
          />
        </span>
      ))}
    </div>
  );
}
