import { useQuery } from '@tanstack/react-query';
import { useId } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Loaded } from '../../../ui/loaded.js';
import { LotNumber } from '../../../ui/values.js';
import { type Holding, usableStockQuery } from '../api/list-usable-stock.js';
import type { UsageLine } from '../api/preview-visit.js';
import { useChairside } from '../chairside-context.js';
import { withoutScanned, withScanned } from '../draft/change-draft.js';
import { ofLot } from '../draft/trouble.js';
import { consumableName } from '../words.js';
import css from './usage-panel.module.css';

/** What of it is on hand: the container in the hand is taken first. */
export function LotChoice({ consumable }: Pick<UsageLine, 'consumable'>) {
  const t = useText();
  const { draft, change, settle } = useChairside();
  const query = useQuery(usableStockQuery(consumable.id));
  const group = useId();
  const chosen = draft.scanned.find(({ consumableId }) => consumableId === consumable.id);
  const words = t.chairside.usage;
  const choose = ({ id, lot }: Holding) => {
    settle(ofLot(lot.id));
    const { id: consumableId } = consumable;
    const name = consumableName(consumable);
    const { id: lotId, lotNumber } = lot;
    change((old) => withScanned(old, { lotId, holdingId: id, lotNumber, consumableId, name }));
  };
  return (
    <Loaded query={query}>
      {({ items }) =>
        items.length === 0 ? (
          <p className={css.quiet}>{words.noLots}</p>
        ) : (
          <fieldset className={css.choices} aria-label={words.lots}>
            <label className={css.choice}>
              <input
                type="radio"
                name={group}
                checked={chosen === undefined}
                onChange={() => chosen && change((old) => withoutScanned(old, chosen.lotId))}
              />
              <span>{words.asPlanned}</span>
            </label>
            {items.map((holding) => (
              <label key={holding.id} className={css.choice}>
                <input
                  type="radio"
                  name={group}
                  checked={isChosen(holding, chosen)}
                  onChange={() => choose(holding)}
                />
                <HoldingWords holding={holding} />
              </label>
            ))}
          </fieldset>
        )
      }
    </Loaded>
  );
}

function isChosen(
  holding: Holding,
  chosen: { lotId: string; holdingId: string | null } | undefined,
) {
  return chosen?.holdingId ? chosen.holdingId === holding.id : chosen?.lotId === holding.lot.id;
}

function HoldingWords({ holding }: { readonly holding: Holding }) {
  const t = useText();
  const format = useFormat();
  const words = t.chairside.usage;
  const { lot, location, onHand, consumable, openedOn, effectiveExpiry } = holding;
  const parts = [
    location.name,
    format.quantity(onHand, consumable.unit),
    ...(openedOn === null ? [] : [words.open]),
    effectiveExpiry === null ? words.noExpiry : words.until(format.day(effectiveExpiry)),
  ];
  return (
    <span>
      <LotNumber value={lot.lotNumber} /> <small>{parts.join(' · ')}</small>
    </span>
  );
}
