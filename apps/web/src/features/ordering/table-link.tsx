import { getRouteApi, Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';

const route = getRouteApi('/in/ordering/items/$consumableId');

interface Props {
  readonly of: 'history' | 'fan';
  readonly asTable: boolean;
}

/** The same numbers as a table, or the picture alone; which it is stands in the address. */
export function TableLink({ of, asTable }: Props) {
  const w = useText().orderingItem;
  const { consumableId } = route.useParams();
  return (
    <Link
      className="tb-screen-only"
      from="/ordering/items/$consumableId"
      to="/ordering/items/$consumableId"
      params={{ consumableId }}
      search={(old) => ({ ...old, [of]: asTable ? undefined : ('table' as const) })}
      resetScroll={false}
      replace
    >
      {asTable ? w.asPicture : w.asTable}
    </Link>
  );
}
