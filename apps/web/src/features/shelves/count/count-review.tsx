import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { Section } from '../../../ui/section.js';
import { Amount, LotNumber } from '../../../ui/values.js';
import { Second } from '../parts/second.js';
import { nameOf } from '../parts/what.js';
import css from './count.module.css';
import { Difference } from './difference.js';
import { type CountedLine, differing } from './draft.js';
import type { Count } from './use-count.js';

const route = getRouteApi('/in/shelves');

/** The differences, before they are booked. */
export function CountReview({ count }: { readonly count: Count }) {
  const { counting } = useText();
  const { form, read } = count;
  const navigate = route.useNavigate();
  const columns = useReviewColumns(count);
  const rows = differing(read.lines);
  const equal = read.lines.length - rows.length;
  const back = () => void navigate({ search: (old) => ({ ...old, step: undefined }) });
  return (
    <Form form={form}>
      <Section title={counting.reviewTitle} hint={counting.reviewHint}>
        {rows.length === 0 ? (
          <p className={css.equal}>{counting.none}</p>
        ) : (
          <div className={css.table}>
            <DataTable
              label={counting.reviewTitle}
              columns={columns}
              rows={rows}
              rowKey={({ holding }) => holding.id}
            />
          </div>
        )}
        {rows.length > 0 && equal > 0 && <p className={css.equal}>{counting.equal(equal)}</p>}
      </Section>
      <FormActions>
        <SubmitButton form={form}>{counting.book}</SubmitButton>
        <Button variant="default" onClick={back}>
          {counting.back}
        </Button>
      </FormActions>
    </Form>
  );
}

function useReviewColumns({ form }: Count): Column<CountedLine>[] {
  const { columns } = useText().counting;
  const what = ({ holding }: CountedLine) => (
    <>
      {nameOf(holding.consumable)}
      <Second>{holding.location.name}</Second>
      {form.errorAt(holding.id) !== undefined && (
        <span role="alert" className={css.problem}>
          {form.errorAt(holding.id)}
        </span>
      )}
    </>
  );
  return [
    { id: 'what', head: columns.what, cell: what },
    {
      id: 'lot',
      head: columns.lot,
      cell: ({ holding }) => <LotNumber value={holding.lot.lotNumber} />,
    },
    {
      id: 'expected',
      head: columns.expected,
      align: 'end',
      cell: ({ holding }) => <Amount value={holding.onHand} unit={holding.consumable.unit} />,
    },
    {
      id: 'counted',
      head: columns.counted,
      align: 'end',
      cell: ({ holding, counted }) => <Amount value={counted} unit={holding.consumable.unit} />,
    },
    {
      id: 'difference',
      head: columns.difference,
      align: 'end',
      cell: ({ holding, difference }) => (
        <Difference micro={difference} unit={holding.consumable.unit} />
      ),
    },
  ];
}
