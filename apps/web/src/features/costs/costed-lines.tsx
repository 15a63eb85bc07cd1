import { Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Amount } from '../../ui/values.js';
import type { CostedLine, CostSource } from './api/explain-cost.js';
import css from './costed-lines.module.css';
import { ExactMoney } from './exact-money.js';
import { fullNameOf } from './full-name.js';

interface Props {
  readonly title: string;
  readonly hint?: string;
  readonly lines: readonly CostedLine[];
}

/** What was used, and below it each entry of the ledger that it was taken with. */
export function CostedLines({ title, hint, lines }: Props) {
  const t = useText();
  return (
    <Section title={title} {...(hint === undefined ? {} : { hint })}>
      {lines.length === 0 && <p className={css.none}>{t.costs.one.noLines}</p>}
      <ol className={css.lines} aria-label={title}>
        {lines.map((line) => (
          <Line key={line.usageLineId} line={line} />
        ))}
      </ol>
    </Section>
  );
}

function Line({ line }: { readonly line: CostedLine }) {
  const t = useText();
  const format = useFormat();
  const words = t.costs.one;
  const { consumable, driver } = line;
  const why = driver === null ? words.byHand : words.driver(words.drivers[driver] ?? driver);
  return (
    <li className={css.line}>
      <div className={css.what}>
        <h3>{fullNameOf(consumable)}</h3>
        <p>{why}</p>
        {line.attempt > 1 && <StatusMark tone="caution">{words.attempt(line.attempt)}</StatusMark>}
      </div>
      <Quantities line={line} />
      <div className={css.cost}>
        <ExactMoney value={line.share} />
        {line.belongsTo !== 'restoration' && (
          <p>{words.lineShare(format.number(line.cost), words.belongs[line.belongsTo])}</p>
        )}
      </div>
      <ul className={css.sources}>
        {line.sources.map((source) => (
          <Source key={source.movementId} source={source} unit={consumable.unit} />
        ))}
        {line.estimated && (
          <li>
            <StatusMark tone="caution">
              {words.shortfall(
                format.quantity(line.shortfall, consumable.unit),
                `${format.number(line.estimatedCost)} ${format.currency}`,
              )}
            </StatusMark>
          </li>
        )}
      </ul>
    </li>
  );
}

const QUANTITIES = ['planned', 'placed', 'dispensed', 'charged'] as const;

function Quantities({ line }: { readonly line: CostedLine }) {
  const t = useText();
  return (
    <dl className={css.quantities}>
      {QUANTITIES.map((name) => (
        <div key={name}>
          <dt>{t.costs.one.quantities[name]}</dt>
          <dd>
            <Amount value={line[name]} unit={line.consumable.unit} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface SourceProps {
  readonly source: CostSource;
  readonly unit: string;
}

/** So much of one lot, from one line of one delivery, at the price of its pack. */
function Source({ source, unit }: SourceProps) {
  const t = useText();
  const format = useFormat();
  const may = useMay();
  const words = t.costs.one;
  const { lot, sureness } = source;
  const quantity = format.quantity(source.quantity, unit);
  const cost = `${format.number(source.cost)} ${format.currency}`;
  const delivery = words.delivery(
    source.supplier.name,
    format.day(source.receivedOn),
    source.deliveryLine,
  );
  const lotName = lot.lotNumber === null ? words.noLot : words.lot(lot.lotNumber);
  return (
    <li>
      <span>
        {source.direction === 'used'
          ? words.source(quantity, cost)
          : words.cameBack(quantity, cost)}
      </span>
      <span>
        {may('trace.read') ? (
          <Link to="/trace" search={{ lotId: lot.id }}>
            {lotName}
          </Link>
        ) : (
          lotName
        )}
        {sureness !== null &&
          sureness !== 'not stated' &&
          `, ${words.sureness[sureness] ?? sureness}`}
      </span>
      <span>
        {may('deliveries.read') ? (
          <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: source.deliveryId }}>
            {delivery}
          </Link>
        ) : (
          delivery
        )}
      </span>
      <span>{words.pack(source.presentationName, format.money(source.packPrice))}</span>
      {may('stock.read') && (
        <Link
          className="tb-screen-only"
          to="/shelves/movements"
          search={{ layerId: source.layerId }}
          aria-label={words.movementOf(delivery)}
        >
          {words.movement}
        </Link>
      )}
    </li>
  );
}
