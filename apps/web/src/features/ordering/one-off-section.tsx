import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useMay, useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { DateField, NoteField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { RowButton } from '../../ui/row-button.js';
import { Section } from '../../ui/section.js';
import { useFocusKept } from '../../ui/use-focus-kept.js';
import { useForm } from '../../ui/use-form.js';
import { useReport } from '../../ui/use-report.js';
import { markOneOff, type OneOff, oneOffsQuery, withdrawOneOff } from './api/marks.js';
import { PLANNING_CHANGES } from './api/planning-settings.js';
import css from './parts.module.css';

const route = getRouteApi('/in/ordering/items/$consumableId');

/** Days whose use says nothing about the days to come. */
export function OneOffSection({ consumableId }: { readonly consumableId: string }) {
  const w = useText().orderingItem.oneOff;
  const may = useMay();
  const { do: doing } = route.useSearch();
  const navigate = route.useNavigate();
  const open = (what: 'mark' | undefined) =>
    void navigate({ search: (old) => ({ ...old, do: what }), resetScroll: false });
  const query = useQuery(oneOffsQuery);
  const write = may('ordering.manage');
  const own = (query.data?.marks ?? []).filter(
    (mark) => mark.consumableId === consumableId && !mark.withdrawn,
  );
  const place = useFocusKept(own.length);
  return (
    <Section title={w.title} hint={w.hint}>
      <div ref={place} className={css.list}>
        <Loaded query={query}>{() => <MarkedDays marks={own} />}</Loaded>
        {write && (
          <Button variant="default" className="tb-screen-only" onClick={() => open('mark')}>
            {w.add}
          </Button>
        )}
      </div>
      <Dialog title={w.add} opened={write && doing === 'mark'} onClose={() => open(undefined)}>
        <MarkForm consumableId={consumableId} onClose={() => open(undefined)} />
      </Dialog>
    </Section>
  );
}

function MarkedDays({ marks }: { readonly marks: readonly OneOff[] }) {
  const w = useText().orderingItem.oneOff;
  const may = useMay();
  const format = useFormat();
  const report = useReport();
  const { book } = useBooking({ send: withdrawOneOff, changes: PLANNING_CHANGES });
  if (marks.length === 0) return <p className={css.words}>{w.none}</p>;
  const withdraw = async (id: string) => {
    await book(id);
    notify({ tone: 'done', text: w.withdrawn });
  };
  return (
    <ul className={css.marked}>
      {marks.map((mark) => {
        const days = w.span(format.day(mark.firstDay), format.day(mark.lastDay));
        return (
          <li key={mark.id}>
            <span>
              <strong>{days}</strong> {mark.note} <span className={css.quiet}>{w.by(mark.by)}</span>
            </span>
            {may('ordering.manage') && (
              <RowButton
                label={w.withdrawOf(days)}
                onClick={() => void withdraw(mark.id).catch(report)}
              >
                {w.withdraw}
              </RowButton>
            )}
          </li>
        );
      })}
    </ul>
  );
}

interface FormProps {
  readonly consumableId: string;
  readonly onClose: () => void;
}

function MarkForm({ consumableId, onClose }: FormProps) {
  const t = useText();
  const w = t.orderingItem.oneOff;
  const { today } = useSession();
  const { book } = useBooking({ send: markOneOff, changes: PLANNING_CHANGES });
  const form = useForm({
    initial: { firstDay: today, lastDay: today, note: '' },
    check: ({ firstDay, lastDay, note }) => ({
      firstDay: firstDay === '' ? t.ui.required : undefined,
      lastDay: lastDay < firstDay ? w.order : undefined,
      note: note.trim() === '' ? t.ui.required : undefined,
    }),
    send: (values) => book({ ...values, note: values.note.trim(), consumableId }),
    onDone: () => {
      notify({ tone: 'done', text: w.marked });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <FieldRow>
        <DateField label={w.first} {...form.field('firstDay')} />
        <DateField label={w.last} {...form.field('lastDay')} />
      </FieldRow>
      <NoteField label={w.note} {...form.field('note')} maxLength={500} />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
