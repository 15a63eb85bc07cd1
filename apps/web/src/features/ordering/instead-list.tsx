import { Link } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Substitute } from './api/list-proposals.js';
import { nameOf } from './names.js';
import css from './parts.module.css';

/** What a person could take instead. */
export function InsteadList({ list }: { readonly list: readonly Substitute[] }) {
  return (
    <ul className={css.instead}>
      {list.map((each) => (
        <li key={`${each.kind} ${each.consumable.id} ${each.presentation?.id ?? ''}`}>
          <Instead substitute={each} />
        </li>
      ))}
    </ul>
  );
}

function Instead({ substitute }: { readonly substitute: Substitute }) {
  const { ordering } = useText();
  const w = ordering.instead;
  const format = useFormat();
  const { kind, consumable, presentation, supplierName, unitPrice, spare, note } = substitute;
  const own = kind === 'another pack';
  const price =
    unitPrice === null
      ? ordering.now.noPrice
      : w.price(format.money(unitPrice), format.unitName('1', consumable.unit));
  const stock = spare === '0' ? w.noSpare : w.spare(format.amount(spare, consumable.unit));
  const facts = [own ? null : presentation?.name, supplierName, price, own ? null : stock];
  return (
    <>
      <span className={css.kind}>{w.kinds[kind]}</span>{' '}
      {own ? (
        presentation?.name
      ) : (
        <Link to="/ordering/items/$consumableId" params={{ consumableId: consumable.id }}>
          {nameOf(consumable)}
        </Link>
      )}
      <span className={css.quiet}>
        {facts.filter((fact) => fact !== null && fact !== undefined).map((fact) => ` · ${fact}`)}
      </span>
      {note !== null && <span className={css.note}>“{note}”</span>}
    </>
  );
}
