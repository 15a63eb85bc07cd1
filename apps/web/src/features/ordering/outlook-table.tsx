import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Outlook, Proposal } from './api/list-proposals.js';
import css from './parts.module.css';

/** What becomes of the shelf without and with what is proposed. */
export function OutlookTable({ line }: { readonly line: Proposal }) {
  const w = useText().ordering.outlook;
  const format = useFormat();
  const { unit } = line.consumable;
  const rows: readonly [string, (of: Outlook) => string][] = [
    [w.stockOut, (of) => format.percent(of.stockOutChance)],
    [w.short, (of) => format.amount(of.short, unit)],
    [w.wasted, (of) => format.amount(of.wasted, unit)],
    [w.stock, (of) => format.amount(of.averageStock, unit)],
  ];
  return (
    <table className={css.small} aria-label={w.title}>
      <thead>
        <tr>
          <td />
          <th scope="col">{w.without}</th>
          <th scope="col">{w.with}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, of]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{of(line.before)}</td>
            <td>{of(line.after)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
