import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { NoteField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { plansQuery } from './api/list-plans.js';
import { ChargeFields } from './charge-fields.js';
import css from './charges.module.css';
import type { ChargesOfVisit } from './charges-of-visit.js';
import { useCharges } from './use-charges.js';
import { useWorkOut, type WorkOut } from './use-work-out.js';

/** Records what was charged, or corrects it; what was said before stays to be read. */
export function ChargesForm(props: ChargesOfVisit & { readonly onClose: () => void }) {
  const { visit, records, fees, onClose } = props;
  const t = useText();
  const words = t.visitCharges;
  const charges = useCharges(props, onClose);
  const workOut = useWorkOut(visit.id, charges);
  const plans = useQuery(plansQuery).data?.items ?? [];
  const { form } = charges;
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => place.current?.querySelector<HTMLElement>('input, select')?.focus(), []);
  const corrects = charges.before.some(({ isRecorded }) => isRecorded);
  return (
    <div ref={place} className={css.form}>
      <Form form={form}>
        {visit.restorations.map((made, i) => (
          <ChargeFields
            key={made.id}
            of={{ made, i, fees, plans, chart: visit.chartReference }}
            charge={records.find((each) => each.restorationId === made.id && each.current)}
            charges={charges}
            workOut={workOut}
          />
        ))}
        {form.values.charges.some(({ planId }) => planId !== '') && <Terms workOut={workOut} />}
        {corrects && (
          <div className={css.note}>
            <NoteField
              label={words.why}
              hint={words.whyHint}
              maxLength={500}
              {...form.field('note')}
            />
          </div>
        )}
        <FormActions>
          <SubmitButton form={form}>{words.save}</SubmitButton>
          <Button variant="default" onClick={onClose}>
            {t.ui.cancel}
          </Button>
        </FormActions>
      </Form>
    </div>
  );
}

/** The way to what the plans say, and what they leave for later. */
function Terms({ workOut }: { readonly workOut: WorkOut }) {
  const words = useText().visitCharges;
  const format = useFormat();
  return (
    <div className={css.terms}>
      <Button variant="light" onClick={workOut.workOut} loading={workOut.isBusy}>
        {words.workOut}
      </Button>
      <div role="status" className={css.quiet}>
        {workOut.left.length === 0 ? (
          <p>{words.workOutHint}</p>
        ) : (
          workOut.left.map(({ plan, deductibleLeft, maximumLeft }) => (
            <p key={plan.id}>
              {words.left(
                plan.name,
                format.money(deductibleLeft),
                maximumLeft === null ? null : format.money(maximumLeft),
              )}
            </p>
          ))
        )}
      </div>
    </div>
  );
}
