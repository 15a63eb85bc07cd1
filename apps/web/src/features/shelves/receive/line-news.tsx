import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { StatusMark } from '../../../ui/status-mark.js';
import type { LineCheck } from '../api/check-delivery.js';
import css from './receive.module.css';
import type { LineNews } from './use-arrival-check.js';

/** What the service says of a line before it is booked; nothing is said twice. */
export function LineNewsRow({ news }: { readonly news: LineNews }) {
  const { receiveMore: words } = useText();
  const [first] = news.layers;
  return (
    <div className={css.news} role="status">
      {first && <Landed layers={news.layers} />}
      {news.notes.map(({ kind, sentence }) => (
        <StatusMark key={sentence} tone="caution">
          {kind === 'more than ordered' ? words.moreThanOrdered : sentence}
        </StatusMark>
      ))}
      {first && <NotInTime layers={news.layers} />}
      {first?.price?.contentChanged && <PackChange line={first} price={first.price} />}
    </div>
  );
}

function Landed({ layers }: { readonly layers: readonly LineCheck[] }) {
  const { receiveMore: words } = useText();
  const format = useFormat();
  return layers.map((layer) => (
    <span key={`${layer.consumable.id}/${layer.lotNumber}`}>
      {layers.length > 1 && `${nameIn(layers, layer)}: `}
      {words.landed(
        format.money(layer.landedCost),
        `${format.number(layer.landedUnitCost)} ${format.currency}/${format.unitName('1', layer.consumable.unit)}`,
      )}
    </span>
  ));
}

/** What tells the layers of one line apart: their lots, or in a kit what they are. */
function nameIn(layers: readonly LineCheck[], layer: LineCheck): string {
  const isKit = layers.some((one) => one.consumable.id !== layer.consumable.id);
  return isKit ? layer.consumable.name : (layer.lotNumber ?? '–');
}

function NotInTime({ layers }: { readonly layers: readonly LineCheck[] }) {
  const { receiveMore: words } = useText();
  const format = useFormat();
  const flag = layers
    .flatMap((layer) => layer.flags)
    .find((one) => one.kind === 'not used in time');
  if (!flag) return null;
  const days = (of: number) => format.number(String(of));
  return (
    <StatusMark tone="caution">
      {words.notInTime(days(flag.limitDays), days(flag.daysLeft))}
    </StatusMark>
  );
}

interface PackChangeProps {
  readonly line: LineCheck;
  readonly price: NonNullable<LineCheck['price']>;
}

/** Another number in a pack: only the price per unit says what became dearer. */
function PackChange({ line, price }: PackChangeProps) {
  const { receive, receiveMore: words } = useText();
  const format = useFormat();
  const { unit } = line.consumable;
  const amount = (of: string) => format.quantity(of, unit);
  const change = price.unitChange;
  const per = words.perUnit(format.unitName('1', unit));
  const moved =
    change === null || change === '0'
      ? words.sameUnitPrice
      : change.startsWith('-')
        ? receive.cheaper(format.percent(change.slice(1)))
        : receive.dearer(format.percent(change));
  const tone = change === null || change === '0' || change.startsWith('-') ? 'good' : 'caution';
  return (
    <StatusMark tone={tone}>
      {`${words.packChanged(amount(price.lastPackContent), amount(price.packContent))} ${per} ${moved}`}
    </StatusMark>
  );
}
