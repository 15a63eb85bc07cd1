import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { More } from '../../ui/more.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import type { ItemForecast } from './api/planned-items.js';
import { assumedWords } from './line-words.js';
import { methodWords } from './method-words.js';
import css from './parts.module.css';

/** Which method forecasts it, why, and how the others did. */
export function MethodSection({ forecast }: { readonly forecast: ItemForecast }) {
  const t = useText();
  const w = t.orderingItem.methods;
  const format = useFormat();
  const { methods, reason, origins, judgedDays, consumable } = forecast;
  const chosen = methods.find((each) => each.chosen)?.method ?? '';
  const told = (method: string) => methodWords(method, format, t);
  const loss = ({ loss: value }: (typeof methods)[number]) =>
    value === null ? Number.POSITIVE_INFINITY : Number(value);
  return (
    <Section title={w.title}>
      <p className={css.words}>
        {w.reasons[reason](told(chosen))} {origins > 0 && w.judged(origins, judgedDays)}
      </p>
      <ul className={css.plain}>
        {forecast.assumed.map((assumed) => (
          <li key={assumed.code}>{assumedWords(assumed, consumable.unit, format, t)}</li>
        ))}
      </ul>
      {origins > 0 && (
        <More summary={w.compare}>
          <DataTable
            label={w.title}
            rows={[...methods].sort((a, b) => loss(a) - loss(b))}
            rowKey={(each) => each.method}
            columns={[
              { id: 'method', head: w.method, cell: (each) => told(each.method) },
              {
                ...{ id: 'loss', head: w.loss, align: 'end' },
                cell: (each) =>
                  each.loss === null
                    ? w.unknown
                    : format.amount(Number(each.loss).toPrecision(3), consumable.unit),
              },
              {
                ...{ id: 'chosen', head: '' },
                cell: (each) =>
                  each.chosen ? <StatusMark tone="accent">{w.chosen}</StatusMark> : null,
              },
            ]}
          />
        </More>
      )}
    </Section>
  );
}
