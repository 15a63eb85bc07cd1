import { Button } from '@mantine/core';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useBooking } from '../../api/use-booking.js';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { notify } from '../../ui/notice-store.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { useReport } from '../../ui/use-report.js';
import { Money } from '../../ui/values.js';
import type { Basket } from './api/list-proposals.js';
import { makeOrder } from './api/make-order.js';
import { shapedWords } from './line-words.js';
import { packsTyped } from './packs-typed.js';
import { basketSums, formatSum, meanPackPrice } from './price-of.js';
import { ProposalRow } from './proposal-row.js';
import css from './to-order.module.css';

/** The order to one supplier: what it holds, why, and what it comes to; packs can be changed. */
export function BasketSection({ basket }: { readonly basket: Basket }) {
  const t = useText();
  const w = t.ordering.now;
  const format = useFormat();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const packs = basket.lines.map((line) => packsTyped(line, typed[line.consumable.id]));
  const isChanged = basket.lines.some((line, i) => packs[i] !== line.packs);
  const sums = basketSums(basket, (i) => packs[i] ?? 0);
  const supplier = basket.supplier?.name ?? w.noSupplier;
  return (
    <Section
      title={supplier}
      aside={<BasketState basket={basket} missing={sums.missing} changed={isChanged} />}
      {...(basket.supplier === null ? { hint: w.noSupplierHint } : {})}
    >
      {!isChanged && basket.shaped.length > 0 && (
        <ul className={css.shaped}>
          {basket.shaped.map((shaping) => (
            <li key={`${shaping.choice} ${shaping.consumable?.id ?? ''}`}>
              {shapedWords(shaping, format, t)}
            </li>
          ))}
        </ul>
      )}
      <ul className={css.lines}>
        {basket.lines.map((line, i) => (
          <ProposalRow
            key={line.consumable.id}
            line={line}
            packs={packs[i]}
            typed={typed[line.consumable.id]}
            onTyped={(text) => setTyped((old) => ({ ...old, [line.consumable.id]: text }))}
          />
        ))}
      </ul>
      <div className={css.foot}>
        <Figures>
          <Figure label={w.goods}>
            <Money value={formatSum(sums.goods)} />
          </Figure>
          <Figure label={w.freight}>
            <Money value={formatSum(sums.freight)} />
          </Figure>
          <Figure label={w.total} large>
            <Money value={formatSum(sums.total)} />
          </Figure>
        </Figures>
        {basket.supplier !== null && <MakeOrder basket={basket} packs={packs} />}
      </div>
    </Section>
  );
}

interface StateProps {
  readonly basket: Basket;
  readonly missing: bigint;
  readonly changed: boolean;
}

function BasketState({ basket, missing, changed }: StateProps) {
  const w = useText().ordering.now;
  const format = useFormat();
  if (missing > 0n) {
    return <StatusMark tone="caution">{w.missing(format.money(formatSum(missing)))}</StatusMark>;
  }
  if (changed) return <StatusMark tone="accent">{w.changed}</StatusMark>;
  return basket.status === 'ready' ? (
    <StatusMark tone="good">{w.ready}</StatusMark>
  ) : (
    <StatusMark tone="caution">{w.tooSmall}</StatusMark>
  );
}

interface MakeProps {
  readonly basket: Basket;
  /** Of each line; undefined where what is typed is no number of packs. */
  readonly packs: readonly (number | undefined)[];
}

function MakeOrder({ basket, packs }: MakeProps) {
  const w = useText().ordering.now;
  const may = useMay();
  const report = useReport();
  const navigate = useNavigate();
  const { book, isBooking } = useBooking({
    send: makeOrder,
    changes: [['orders'], ['reorder'], ['alerts']],
  });
  const lines = basket.lines.flatMap(({ presentation }, i) => {
    const count = packs[i] ?? 0;
    if (presentation === null || count === 0) return [];
    return [
      {
        presentationId: presentation.id,
        packs: count,
        packPrice: meanPackPrice(presentation, count),
      },
    ];
  });
  const isWrong = packs.includes(undefined);
  const { supplier } = basket;
  if (supplier === null || !may('orders.write')) return null;
  const make = async () => {
    const order = await book({ supplierId: supplier.id, lines, fromProposal: true });
    notify({ tone: 'done', text: w.made(String(order.number)) });
    await navigate({ to: '/ordering/orders/$orderId', params: { orderId: order.id } });
  };
  return (
    <div className={`${css.make ?? ''} tb-screen-only`}>
      {lines.length === 0 && !isWrong && <span>{w.nothing}</span>}
      <Button
        aria-label={w.makeFor(supplier.name)}
        loading={isBooking}
        disabled={isWrong || lines.length === 0}
        onClick={() => void make().catch(report)}
      >
        {w.make}
      </Button>
    </div>
  );
}
