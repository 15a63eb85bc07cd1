import type { Format } from '../../text/format.js';
import type { Text } from '../../text/text.js';
import type { Alert } from './api/list-alerts.js';

/** 'Paste, Body 2': how a sentence names a consumable. */
export function nameOf({ name, shade, size, grit }: Alert['consumable']): string {
  return [name, shade, size, grit].filter((part) => part !== null && part !== '').join(', ');
}

/** What an alert is about: its order, or its consumable. */
export function titleOf({ order, consumable }: Alert, t: Text): string {
  return order === null ? nameOf(consumable) : t.today.order(String(order.number), order.supplier);
}

/** So many booked visits are named; the screen of booked visits has them all. */
const NAMED = 3;

function figureOf(alert: Alert, figure: string): string | undefined {
  return alert.figures.find(({ name }) => name === figure)?.value;
}

function daysAfter(iso: string, days: number): string {
  return new Date(Date.parse(`${iso}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** Why somebody is needed, in the person's language, from the figures of the alert. */
export function sentenceOf(alert: Alert, asOf: string, format: Format, t: Text): string {
  const words = t.today.sentences;
  const { kind, consumable, lot, location } = alert;
  const what = nameOf(consumable);
  if (kind === 'overdue order') {
    return words.late(what, Number(figureOf(alert, 'outstanding lines') ?? 1));
  }
  const amount = (figure: string) => format.amount(figureOf(alert, figure) ?? '0', consumable.unit);
  if (kind === 'open shortfall') {
    return words.shortfall(what, amount('open shortfall'), Number(figureOf(alert, 'visits') ?? 1));
  }
  if (kind === 'runs out before delivery') {
    const until = daysAfter(asOf, Number(figureOf(alert, 'days until delivery') ?? 0));
    const hit = alert.bookedVisits.map(({ day, chartReference, toCome }) =>
      words.bookedVisit(format.day(day), chartReference, toCome),
    );
    return words.runsOut({
      ...{ what, use: amount('use until delivery') },
      amount: figureOf(alert, 'usable') === '0' ? null : amount('usable'),
      ...{ day: format.day(until), chance: figureOf(alert, 'chance') ?? '0' },
      seen: seenOf(alert),
      ...{ hit: hit.slice(0, NAMED), more: Math.max(0, hit.length - NAMED) },
    });
  }
  if (kind === 'below reorder point') return words.low(lowOf(alert, asOf, format));
  if (!lot || !location) return alert.sentence;
  const on = {
    what,
    amount: amount('on hand'),
    lot: lot.lotNumber === null ? t.today.lotNotStated : t.today.lot(lot.lotNumber),
    place: location.name,
  };
  if (kind === 'recalled lot on hand') return words.held(on, t.today.statuses[lot.status]);
  const left = Number(figureOf(alert, 'days left') ?? 0);
  const day = format.day(daysAfter(asOf, left));
  if (kind === 'expired on shelf') return words.expired({ ...on, day });
  if (kind === 'opened too long') return words.openTooLong({ ...on, day });
  return words.expires({ ...on, day }, left);
}

function seenOf(alert: Alert) {
  const [share, orders] = [figureOf(alert, 'deliveries by then'), figureOf(alert, 'orders seen')];
  return share === undefined || orders === undefined ? null : { share, orders };
}

type Low = Parameters<Text['today']['sentences']['low']>[0];

/** By which level an alert goes, in the person's units and dates. */
function lowOf(alert: Alert, asOf: string, format: Format): Low {
  const { consumable, level } = alert;
  const computed = level?.computed ?? null;
  const amount = (value: string) => format.amount(value, consumable.unit);
  const expiring = figureOf(alert, 'expected to expire first');
  return {
    what: nameOf(consumable),
    usable: amount(figureOf(alert, 'usable') ?? '0'),
    expiring: expiring === undefined ? null : amount(expiring),
    at: amount(level?.at ?? '0'),
    by: level?.kind ?? 'typed in',
    heldBack: level?.heldBack ?? false,
    computed: computed && {
      point: amount(computed.reorderPoint),
      orders: computed.orders,
      use: amount(computed.expectedUse),
      days: computed.days,
      service: format.percent(computed.serviceLevel),
      on: computed.on === asOf ? null : format.day(computed.on),
    },
  };
}

/** Told in the sentence already. */
const IN_SENTENCE = ['use in days covered', 'days covered', 'deliveries by then', 'orders seen'];

export interface ShownFigure {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
}

/** The figures that say something: nothing owed and time left of what nobody may use do not. */
export function shownFigures(alert: Alert, t: Text): ShownFigure[] {
  const names: Readonly<Record<string, string>> = t.today.figures;
  const owed = figureOf(alert, 'open shortfall') !== '0';
  const coming = alert.figures.some(({ name }) => name === 'on order');
  const idle = (name: string) =>
    IN_SENTENCE.includes(name) ||
    (alert.kind === 'recalled lot on hand' && name === 'days left') ||
    (!owed && (name === 'open shortfall' || (name === 'position' && !coming)));
  return alert.figures
    .filter(({ name }) => !idle(name))
    .map(({ name, value, unit }) =>
      name === 'days left' && value.startsWith('-')
        ? { label: t.today.daysOver, value: value.slice(1), unit }
        : { label: names[name] ?? name, value, unit },
    );
}
