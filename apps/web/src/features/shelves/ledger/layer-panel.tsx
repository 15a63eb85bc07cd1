import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Loaded } from '../../../ui/loaded.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Amount, Money } from '../../../ui/values.js';
import { type Layer, layerQuery } from '../api/get-layer.js';
import { nameOf } from '../parts/what.js';
import { barOf, partsOf } from './balance.js';
import css from './ledger.module.css';
import { unitCost } from './unit-cost.js';

/** One delivery line: received = on hand + used + wasted + returned + count differences. */
export function LayerPanel({ layerId }: { readonly layerId: string }) {
  const layer = useQuery(layerQuery(layerId));
  return <Loaded query={layer}>{(data) => <Panel layer={data} />}</Loaded>;
}

function Panel({ layer }: { readonly layer: Layer }) {
  const { layer: words, movements, ui } = useText();
  const format = useFormat();
  const { consumable, lot, supplier, receivedOn, mass } = layer;
  return (
    <section className={css.panel} aria-label={words.title}>
      <div className={css.head}>
        <h2>{`${nameOf(consumable)}, ${movements.lot(lot.lotNumber ?? ui.notStated)}`}</h2>
        <StatusMark tone={mass.balanced ? 'good' : 'danger'}>
          {mass.balanced ? words.balanced : words.unbalanced}
        </StatusMark>
      </div>
      <p className={css.from}>{words.from(format.day(receivedOn), supplier.name)}</p>
      <Equation layer={layer} />
      <Bar layer={layer} />
      <Worth layer={layer} />
      <Links layer={layer} />
    </section>
  );
}

function Equation({ layer: { mass, consumable } }: { readonly layer: Layer }) {
  const { layer: words } = useText();
  const amount = (value: string) => <Amount value={value} unit={consumable.unit} />;
  return (
    <dl className={css.equation} aria-label={words.equation}>
      <div>
        <dt>{words.parts.received}</dt>
        <dd>{amount(mass.received)}</dd>
      </div>
      {partsOf(mass).map((part, i) => (
        <div key={part} className={css.term}>
          <span className={css.sign} aria-hidden="true">
            {i === 0 ? '=' : '+'}
          </span>
          <div>
            <dt>
              <span className={css.swatch} data-part={part} />
              {words.parts[part]}
            </dt>
            <dd>{amount(mass[part])}</dd>
          </div>
        </div>
      ))}
    </dl>
  );
}

function Bar({ layer: { mass } }: { readonly layer: Layer }) {
  return (
    <div className={css.bar} aria-hidden="true">
      {barOf(mass).map(({ part, share }) => (
        <span key={part} data-part={part} style={{ flexGrow: share }} />
      ))}
    </div>
  );
}

function Worth({ layer: { cost, mass, consumable } }: { readonly layer: Layer }) {
  const { layer: words } = useText();
  const format = useFormat();
  const each = unitCost(cost.landedCost, mass.received);
  return (
    <Figures>
      <Figure label={words.paid}>
        <Money value={cost.landedCost} />
      </Figure>
      {each !== undefined && (
        <Figure label={words.unitCost(format.unitName('1', consumable.unit))}>
          <Amount value={each} unit={format.currency} />
        </Figure>
      )}
      <Figure label={words.left}>
        <Money value={cost.remainingValue} />
      </Figure>
    </Figures>
  );
}

function Links({ layer }: { readonly layer: Layer }) {
  const { layer: words } = useText();
  const may = useMay();
  return (
    <div className={`${css.links ?? ''} tb-screen-only`}>
      {may('deliveries.read') && (
        <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: layer.deliveryId }}>
          {words.delivery}
        </Link>
      )}
      <Link to="/shelves" search={{ consumableId: layer.consumable.id }}>
        {words.where}
      </Link>
    </div>
  );
}
