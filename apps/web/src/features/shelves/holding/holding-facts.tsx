import type { ReactNode } from 'react';
import { useText } from '../../../text/text-provider.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Amount, Day, LotNumber, Money } from '../../../ui/values.js';
import type { Holding } from '../api/list-holdings.js';
import { LastDay } from '../parts/last-day.js';
import { Second } from '../parts/second.js';
import { STATUS_TONES } from '../stock/tones.js';
import css from './holding.module.css';

interface Props {
  readonly holding: Holding;
  /** Only what one has to know while doing something with it. */
  readonly brief: boolean;
}

/** Everything about one holding. */
export function HoldingFacts({ holding, brief }: Props) {
  const { facts, statuses, holdings } = useText().shelves;
  const { lot, status, containers } = holding;
  return (
    <dl className={css.facts}>
      <Fact label={facts.lot}>
        <LotNumber value={lot.lotNumber} />
      </Fact>
      <Fact label={facts.location}>{holding.location.name}</Fact>
      <Fact label={facts.state}>
        <StatusMark tone={STATUS_TONES[status]}>{statuses[status]}</StatusMark>
      </Fact>
      <Fact label={facts.amount}>
        <Amount value={holding.onHand} unit={holding.consumable.unit} />
        {containers !== null && <Second>{holdings.sealedContainers(containers)}</Second>}
      </Fact>
      <Fact label={facts.useBy}>
        <LastDay value={holding.effectiveExpiry} />
      </Fact>
      {!brief && <Past holding={holding} />}
    </dl>
  );
}

/** What it was and is worth. */
function Past({ holding }: { readonly holding: Holding }) {
  const { facts } = useText().shelves;
  return (
    <>
      <Fact label={facts.labelExpiry}>
        <Day value={holding.lot.labelExpiry} />
      </Fact>
      {holding.openedOn !== null && (
        <Fact label={facts.openedOn}>
          <Day value={holding.openedOn} />
        </Fact>
      )}
      <Fact label={facts.receivedOn}>
        <Day value={holding.receivedOn} />
      </Fact>
      <Fact label={facts.value}>
        <Money value={holding.value} />
      </Fact>
    </>
  );
}

function Fact({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </>
  );
}
