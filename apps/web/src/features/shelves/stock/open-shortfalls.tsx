import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Section } from '../../../ui/section.js';
import { Amount } from '../../../ui/values.js';
import { openShortfallsQuery, type Shortfall } from '../api/list-shortfalls.js';
import css from './holdings.module.css';

/** What visits used that is on no delivery yet. */
export function OpenShortfalls({ consumableId }: { readonly consumableId: string }) {
  const { shortfalls } = useText().shelves;
  const open = useQuery(openShortfallsQuery(consumableId)).data?.items ?? [];
  if (open.length === 0) return null;
  return (
    <Section title={shortfalls.title} hint={shortfalls.hint}>
      <ul className={css.owed}>
        {open.map((one) => (
          <Owed key={one.id} shortfall={one} />
        ))}
      </ul>
    </Section>
  );
}

function Owed({ shortfall }: { readonly shortfall: Shortfall }) {
  const { shortfalls } = useText().shelves;
  const format = useFormat();
  const may = useMay();
  const words = shortfalls.visit(format.day(shortfall.usedOn));
  return (
    <li>
      {may('visits.read') ? (
        <Link to="/visits/$visitId" params={{ visitId: shortfall.visitId }}>
          {words}
        </Link>
      ) : (
        <span>{words}</span>
      )}
      <span>{shortfall.location.name}</span>
      <Amount value={shortfall.open} unit={shortfall.consumable.unit} />
      <span>
        {shortfall.costKnown && shortfalls.estimate(format.money(shortfall.estimatedCost))}
      </span>
    </li>
  );
}
