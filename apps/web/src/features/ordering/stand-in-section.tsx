import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { NoteField, SearchSelectField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { RowButton } from '../../ui/row-button.js';
import { Section } from '../../ui/section.js';
import { useFocusKept } from '../../ui/use-focus-kept.js';
import { useForm } from '../../ui/use-form.js';
import { useReport } from '../../ui/use-report.js';
import {
  addSubstitute,
  type SubstitutePair,
  substitutesQuery,
  withdrawSubstitute,
} from './api/marks.js';
import { type Consumable, plannedItemsQuery } from './api/planned-items.js';
import { nameOf } from './names.js';
import css from './parts.module.css';

const route = getRouteApi('/in/ordering/items/$consumableId');
const CHANGES = [['reorder']] as const;

/** What people said may stand in for a consumable. */
export function StandInSection({ consumable }: { readonly consumable: Consumable }) {
  const w = useText().orderingItem.standIns;
  const may = useMay();
  const { do: doing } = route.useSearch();
  const navigate = route.useNavigate();
  const open = (what: 'stand-in' | undefined) =>
    void navigate({ search: (old) => ({ ...old, do: what }), resetScroll: false });
  const pairs = useQuery(substitutesQuery).data?.pairs ?? [];
  const items = useQuery(plannedItemsQuery).data?.items ?? [];
  const others = items.map((item) => item.consumable).filter(({ id }) => id !== consumable.id);
  const own = pairs.filter((pair) => pair.consumableId === consumable.id && !pair.withdrawn);
  const write = may('ordering.manage');
  const place = useFocusKept(own.length);
  return (
    <Section title={w.title} hint={w.hint}>
      <div ref={place} className={css.list}>
        <Pairs pairs={own} others={others} />
        {write && (
          <Button variant="default" className="tb-screen-only" onClick={() => open('stand-in')}>
            {w.add}
          </Button>
        )}
      </div>
      <Dialog
        title={w.title}
        opened={write && doing === 'stand-in'}
        onClose={() => open(undefined)}
      >
        <PairForm consumable={consumable} others={others} onClose={() => open(undefined)} />
      </Dialog>
    </Section>
  );
}

interface PairsProps {
  readonly pairs: readonly SubstitutePair[];
  readonly others: readonly Consumable[];
}

function Pairs({ pairs, others }: PairsProps) {
  const w = useText().orderingItem.standIns;
  const may = useMay();
  const report = useReport();
  const { book } = useBooking({ send: withdrawSubstitute, changes: CHANGES });
  if (pairs.length === 0) return <p className={css.words}>{w.none}</p>;
  const withdraw = async (id: string) => {
    await book(id);
    notify({ tone: 'done', text: w.withdrawn });
  };
  return (
    <ul className={css.marked}>
      {pairs.map((pair) => {
        const other = others.find(({ id }) => id === pair.standInId);
        const name = other === undefined ? '' : nameOf(other);
        return (
          <li key={pair.id}>
            <span>
              <strong>{name}</strong> {pair.note} <span className={css.quiet}>{pair.by}</span>
            </span>
            {may('ordering.manage') && (
              <RowButton
                label={w.withdrawOf(name)}
                onClick={() => void withdraw(pair.id).catch(report)}
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
  readonly consumable: Consumable;
  readonly others: readonly Consumable[];
  readonly onClose: () => void;
}

function PairForm({ consumable, others, onClose }: FormProps) {
  const t = useText();
  const w = t.orderingItem.standIns;
  const { book } = useBooking({ send: addSubstitute, changes: CHANGES });
  const form = useForm({
    initial: { standInId: '', note: '' },
    check: ({ standInId }) => ({ standInId: standInId === '' ? t.ui.choose : undefined }),
    send: ({ standInId, note }) =>
      book({ consumableId: consumable.id, standInId, note: note.trim() || null }),
    onDone: () => {
      notify({ tone: 'done', text: w.added });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <SearchSelectField
        label={w.which}
        choices={others
          .filter(({ unit }) => unit === consumable.unit)
          .map((other) => ({ value: other.id, label: nameOf(other) }))}
        {...form.field('standInId')}
      />
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
