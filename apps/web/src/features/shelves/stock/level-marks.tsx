import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { StatusMark } from '../../../ui/status-mark.js';
import type { SummaryRow } from '../api/list-summary.js';
import css from '../parts/parts.module.css';
import { levelOf } from './level.js';

/** Whether there is enough, in a mark and words. */
export function LevelMarks({ row }: { readonly row: SummaryRow }) {
  const { level } = useText().shelves;
  const format = useFormat();
  const { low, owes } = levelOf(row);
  const amount = (value: string) => format.quantity(value, row.consumable.unit);
  return (
    <span className={css.marks}>
      {low === null ? (
        <StatusMark tone="quiet">{level.noPoint}</StatusMark>
      ) : (
        <StatusMark tone={low ? 'caution' : 'good'}>
          {low
            ? level.low(amount(row.reorderAt ?? '0'))
            : level.enough(amount(row.reorderAt ?? '0'))}
        </StatusMark>
      )}
      {owes && <StatusMark tone="danger">{level.owed(amount(row.openShortfall))}</StatusMark>}
    </span>
  );
}
