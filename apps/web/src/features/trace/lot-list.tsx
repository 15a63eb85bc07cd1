import { Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Amount, Day } from '../../ui/values.js';
import type { LotFound } from './api/find.js';
import { fullNameOf } from './full-name.js';
import { LotStatusMark } from './marks.js';

interface Props {
  readonly lots: readonly LotFound[];
  readonly q: string;
  readonly more: boolean;
}

/** Lots to choose from: a number may stand on the labels of several products. */
export function LotList({ lots, q, more }: Props) {
  const t = useText();
  const words = t.trace;
  return (
    <>
      <DataTable
        label={words.chooseLots}
        rows={lots}
        rowKey={(lot) => lot.id}
        columns={[
          {
            ...{ id: 'lot', head: words.back.lot },
            cell: (lot) => (
              <Link to="/trace" search={{ q, lotId: lot.id }}>
                {lot.lotNumber ?? words.lotNotStated}
              </Link>
            ),
          },
          {
            ...{ id: 'product', head: words.back.product },
            cell: (lot) => fullNameOf(lot.consumable),
          },
          {
            ...{ id: 'expiry', head: words.now.until },
            cell: (lot) => <Day value={lot.labelExpiry} />,
          },
          {
            ...{ id: 'status', head: words.status },
            cell: (lot) => <LotStatusMark status={lot.status} />,
          },
          {
            ...{ id: 'onHand', head: words.figures.onHand, align: 'end' },
            cell: (lot) => <Amount value={lot.onHand} unit={lot.consumable.unit} />,
          },
        ]}
      />
      {more && <p>{words.moreLots}</p>}
    </>
  );
}
