import { TextInput } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { More } from '../../ui/more.js';
import { Money } from '../../ui/values.js';
import type { Proposal } from './api/list-proposals.js';
import { LineMarks } from './line-marks.js';
import { known, whyOf } from './line-words.js';
import { nameOf } from './names.js';
import { formatSum, packsPrice } from './price-of.js';
import { ProposalDetails } from './proposal-details.js';
import css from './to-order.module.css';
import { UseStrip } from './use-strip.js';

interface Props {
  readonly line: Proposal;
  /** Undefined where what is typed is no number of packs. */
  readonly packs: number | undefined;
  readonly typed: string | undefined;
  readonly onTyped: (text: string) => void;
}

/** A line of an order before it is one. */
export function ProposalRow({ line, packs, typed, onTyped }: Props) {
  const w = useText().ordering.now;
  const format = useFormat();
  const { presentation, added } = line;
  const price = presentation === null ? null : packsPrice(presentation, packs ?? 0);
  return (
    <Row line={line} about={<Pack line={line} />}>
      <div className={css.amount}>
        <PacksField line={line} packs={packs} typed={typed} onTyped={onTyped} />
        <p className={css.price}>
          {price === null ? w.noPrice : <Money value={formatSum(price)} />}
        </p>
        {packs !== line.packs && (
          <p className={css.quiet}>{w.proposed(format.number(String(line.packs)))}</p>
        )}
        {packs === line.packs && added > 0 && (
          <p className={css.quiet}>{w.early(format.quantity(String(added), 'packs'))}</p>
        )}
      </div>
    </Row>
  );
}

/** Due, but in no order: what stops it. */
export function StuckRow({ line }: { readonly line: Proposal }) {
  const { ordering } = useText();
  const w = ordering.now.stuckWhy;
  const bounds = line.bounds.map((bound) => known(ordering.bounds, bound)).join(', ');
  const why = line.presentation === null ? w['no offer'] : w.limit(bounds);
  return (
    <Row line={line} about={<p className={css.stop}>{why}</p>}>
      <Link
        to="/setup/consumables/$consumableId"
        params={{ consumableId: line.consumable.id }}
        className="tb-screen-only"
      >
        {ordering.now.buying}
      </Link>
    </Row>
  );
}

interface RowProps {
  readonly line: Proposal;
  readonly about: ReactNode;
  readonly children: ReactNode;
}

function Row({ line, about, children }: RowProps) {
  const t = useText();
  const format = useFormat();
  const why = whyOf(line, format, t);
  const { consumable } = line;
  return (
    <li className={css.row}>
      <div className={css.reason}>
        <h3 className={css.name}>
          <Link to="/ordering/items/$consumableId" params={{ consumableId: consumable.id }}>
            {nameOf(consumable)}
          </Link>
        </h3>
        {about}
        {why !== undefined && <p>{why}</p>}
        <LineMarks line={line} />
      </div>
      {children}
      <div className={css.across}>
        <UseStrip line={line} withKey={false} />
        <More summary={t.ordering.now.details}>
          <ProposalDetails line={line} />
        </More>
      </div>
    </li>
  );
}

function Pack({ line }: { readonly line: Proposal }) {
  const w = useText().ordering.now;
  const format = useFormat();
  const { presentation, consumable } = line;
  if (presentation === null) return null;
  const price = packsPrice(presentation, Math.max(line.packs, 1));
  const each =
    price === null ? w.noPrice : format.money(formatSum(price / BigInt(line.packs || 1)));
  const content = format.quantity(presentation.packContent, consumable.unit);
  return <p className={css.quiet}>{`${presentation.name} · ${content} · ${each}`}</p>;
}

function PacksField({ line, packs, typed, onTyped }: Props) {
  const w = useText().ordering.now;
  const may = useMay();
  const format = useFormat();
  const least = line.presentation?.minimumPacks ?? 1;
  if (!may('orders.write')) {
    return <strong>{format.quantity(String(line.packs), 'packs')}</strong>;
  }
  return (
    <TextInput
      className={css.packs ?? ''}
      label={w.packs}
      aria-label={w.packsOf(nameOf(line.consumable))}
      inputMode="numeric"
      autoComplete="off"
      value={typed ?? String(line.packs)}
      error={packs === undefined ? w.wholePacks(least) : undefined}
      onChange={(event) => onTyped(event.currentTarget.value)}
    />
  );
}
