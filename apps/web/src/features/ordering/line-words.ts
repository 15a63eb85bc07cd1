import type { Format } from '../../text/format.js';
import type { Text } from '../../text/text.js';
import type { Assumed, Proposal, Shaping, SupplierLead } from './api/list-proposals.js';
import { nameOf } from './names.js';

/** A figure of a proposal by its name; undefined when it has none of that name. */
function figureOf({ figures }: Proposal, name: string): string | undefined {
  return figures.find((figure) => figure.name === name)?.value;
}

/** Expectations have more digits than they deserve. */
function roughly(format: Format, value: string | undefined, unit: string): string {
  const number = Number(value ?? '0');
  const short = Math.abs(number) >= 100 ? Math.round(number) : Number(number.toPrecision(2));
  return format.amount(String(short), unit);
}

/** Why a line is due, in the person's language, from its figures; undefined without an offer. */
export function whyOf(line: Proposal, format: Format, t: Text): string | undefined {
  const { unit } = line.consumable;
  const of = (name: string) => figureOf(line, name);
  const point = of('reorder point');
  if (point === undefined) return undefined;
  const owed = of('open shortfall') ?? '0';
  const expiring = of('expected to expire first') ?? '0';
  const there = Number(of('usable on hand') ?? 0) + Number(of('on order') ?? 0);
  return t.ordering.why({
    there: format.amount(String(Number(there.toFixed(6))), unit),
    owed: owed === '0' ? null : format.amount(owed, unit),
    position: format.amount(line.position, unit),
    expiring: expiring === '0' ? null : roughly(format, expiring, unit),
    point: format.amount(point, unit),
    use: roughly(format, of('mean use in lead time and review'), unit),
    lead: format.number(Number(of('mean lead time') ?? 0).toFixed(1)),
    review: format.number(of('review period') ?? '0'),
    safety: roughly(format, of('safety stock'), unit),
    service: format.percent(of('service level') ?? '0'),
    byHand: line.flags.includes('levels set by hand'),
  });
}

/** Words for what the service names; its own word where it is newer than this browser's. */
export function known(words: Readonly<Record<string, string>>, word: string): string {
  return words[word] ?? word;
}

/** What shaped an order, as a sentence. */
export function shapedWords(shaping: Shaping, format: Format, t: Text): string {
  const words = t.ordering.shaped;
  const money = (amount: string | null) => format.money(amount ?? '0');
  const missing = money(shaping.missing);
  const costs = { missing, cost: money(shaping.costOfFilling), freight: money(shaping.freight) };
  switch (shaping.choice) {
    case 'left out for the budget': {
      const what = shaping.consumable === null ? '' : nameOf(shaping.consumable);
      return words[shaping.choice]({
        packs: format.quantity(String(shaping.packs ?? 0), 'packs'),
        what,
      });
    }
    case 'filled up to the minimum order':
    case 'minimum order not reached':
    case 'free freight not within reach':
      return words[shaping.choice]({ missing });
    case 'filled up to free freight':
    case 'freight is cheaper than filling up':
      return words[shaping.choice](costs);
  }
}

/** What a forecast took for granted, as a sentence. */
export function assumedWords(assumed: Assumed, unit: string, format: Format, t: Text): string {
  const words = t.ordering.assumed;
  const days = assumed.days ?? 0;
  const amount = format.amount(assumed.quantity ?? '0', unit);
  switch (assumed.code) {
    case 'left out as one-off or retake':
    case 'shortfalls counted as use':
      return words[assumed.code](amount);
    case 'no use yet':
    case 'few uses':
    case 'short history':
    case 'died out':
      return words[assumed.code](days);
  }
}

/** How it is known how long goods take. */
export function leadWords(lead: SupplierLead, format: Format, t: Text): string {
  const words = t.ordering.lead;
  if (lead.orders === 0) return words.stated(lead.statedDays, lead.statedBy);
  const seen = words.seen(lead.orders, format.percent(lead.assumed), lead.statedDays);
  return lead.open === 0 ? seen : `${seen} ${words.open(lead.open)}`;
}
