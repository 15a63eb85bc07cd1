import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Amount } from '../../ui/values.js';
import type { LotTrace } from './api/trace-lot.js';
import { fullNameOf } from './full-name.js';
import css from './lot-head.module.css';
import { LotStatusMark } from './marks.js';

const route = getRouteApi('/in/trace');

/** Which lot it is, whether it may be used, and how far it went. */
export function LotHead({ trace }: { readonly trace: LotTrace }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const { q } = route.useSearch();
  const navigate = route.useNavigate();
  const { lot, affected } = trace;
  const { unit } = lot.consumable;
  const words = t.trace;
  const number = lot.lotNumber === null ? words.lotNotStated : words.lot(lot.lotNumber);
  const count = (n: number) => format.number(String(n));
  return (
    <header className={css.head}>
      {q !== undefined && lot.lotNumber !== null && (
        <p role="status" className={`${css.quiet ?? ''} tb-screen-only`}>
          {words.foundLot(lot.lotNumber)}
        </p>
      )}
      <h2 className={css.title}>{number}</h2>
      <p className={css.product}>{fullNameOf(lot.consumable)}</p>
      <p className={css.quiet}>
        {lot.labelExpiry === null ? words.noExpiry : words.expires(format.day(lot.labelExpiry))}
        {lot.firstReceivedOn !== null &&
          `, ${words.firstReceived(format.day(lot.firstReceivedOn))}`}
      </p>
      <div className={css.status}>
        <LotStatusMark status={lot.status} />
        <span>{lot.status === 'released' ? words.mayBeUsed : words.mayNotBeUsed}</span>
        {may('lots.hold') && (
          <Button
            variant="default"
            className="tb-screen-only"
            onClick={() =>
              void navigate({ search: (old) => ({ ...old, do: 'hold' }), resetScroll: false })
            }
          >
            {words.hold.button}
          </Button>
        )}
      </div>
      <Figures>
        <Figure label={words.figures.received} large>
          <Amount value={trace.mass.received} unit={unit} />
        </Figure>
        <Figure label={words.figures.onHand} large>
          <Amount value={trace.mass.onHand} unit={unit} />
        </Figure>
        <Figure label={words.figures.visits} large>
          {count(affected.visits)}
        </Figure>
        <Figure label={words.figures.charts} large>
          {count(affected.charts)}
        </Figure>
        <Figure label={words.figures.restorations} large>
          {count(affected.restorations)}
        </Figure>
      </Figures>
    </header>
  );
}
