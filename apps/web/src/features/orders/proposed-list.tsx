import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import type { Order, OrderLine } from './api/get-order.js';
import { goodsName } from './api/list-goods.js';
import css from './orders.module.css';
import { proposedWords } from './why-words.js';

/** Why lines of a draft were proposed, on the day on which they were. */
export function ProposedList({ order }: { readonly order: Order }) {
  const w = useText().orders;
  const proposed = order.lines.filter((line) => line.proposed !== null);
  if (proposed.length === 0) return null;
  return (
    <Section title={w.why}>
      {proposed.map((line) => (
        <Why key={line.id} line={line} title={goodsName(line.consumable)} />
      ))}
    </Section>
  );
}

interface Props {
  readonly line: OrderLine;
  readonly title: string;
}

/** What the proposal said of a line, behind a word that opens it. */
export function Why({ line: { proposed }, title }: Props) {
  const t = useText();
  const format = useFormat();
  if (proposed === null) return null;
  const packs = format.amount(String(proposed.packs), 'packs');
  return (
    <details className={css.why}>
      <summary>{title}</summary>
      <p>
        {t.orders.proposed(packs)}.{' '}
        {proposedWords(proposed.figures, format, t) ?? proposed.sentence}
      </p>
    </details>
  );
}
