import { formatMoney } from '#lib/measure';
import { type AlertConsumable, amount, nameOf } from '../alert.js';
import type { BasketChoice, FigureName, OrderProposal } from '../policy/index.js';
import type { PlannedOffer } from './plan-item.js';

export interface ProposalWords {
  readonly consumable: AlertConsumable;
  readonly offer: PlannedOffer | null;
  readonly currency: string;
  /** Packs in the basket; more than proposed where it was filled up. */
  readonly packs: bigint;
  readonly total: string | null;
  /** From how many orders the lead time was seen; 0: it is as stated. */
  readonly ordersSeen: number;
}

/**
 * A proposal as sentences: where the stock stands, where it should be and why, and what to order.
 * Every number in them is among the figures or in the line itself.
 */
export function proposalSentence(proposal: OrderProposal, words: ProposalWords): string {
  return [
    standing(proposal, words),
    why(proposal, words),
    advice(proposal, words),
    ...proposal.flags.map((flag) => `Note: ${flag}.`),
  ]
    .filter((part) => part !== null)
    .join(' ');
}

function figureOf(proposal: OrderProposal, name: FigureName): string | null {
  return proposal.figures.find((figure) => figure.name === name)?.value ?? null;
}

function standing(proposal: OrderProposal, { consumable }: ProposalWords): string {
  const told = (name: FigureName) => amount(figureOf(proposal, name) ?? '0', consumable.unit);
  const owed = figureOf(proposal, 'open shortfall');
  const gone = figureOf(proposal, 'expected to expire first');
  const owing = owed === null || owed === '0' ? '' : `, ${told('open shortfall')} owed to visits`;
  const about = amount(roughly(proposal, 'expected to expire first'), consumable.unit);
  const expiring =
    gone === null || gone === '0'
      ? ''
      : `, of which about ${about} should expire before new goods can come`;
  const usable = `${told('usable on hand')} of ${nameOf(consumable)} usable`;
  return `${usable}${owing}: position ${told('position')}${expiring}.`;
}

function why(proposal: OrderProposal, words: ProposalWords): string | null {
  const { consumable, ordersSeen } = words;
  const { target, override } = proposal.decision.facts;
  const point = figureOf(proposal, 'reorder point');
  if (point === null) return null;
  const told = (name: FigureName) => amount(roughly(proposal, name), consumable.unit);
  const level = `The reorder point is ${amount(point, consumable.unit)}`;
  const use =
    `about ${told('mean use in lead time and review')} are used in a lead time of ` +
    `${roughly(proposal, 'mean lead time')} days on average ` +
    `(${ordersSeen === 0 ? 'as stated' : `seen from ${counted(ordersSeen, 'order')}`}) and ` +
    `${figureOf(proposal, 'review period')} days of review`;
  if (override !== null && override.reorderAt !== null) return `${level}, set by hand; ${use}.`;
  return (
    `${level}: ${use}, and ${told('safety stock')} are kept for a ${target.measure} of ` +
    `${figureOf(proposal, 'service level')}.`
  );
}

/** Expectations have more digits than they deserve: three that count, but all before the point. */
function roughly(proposal: OrderProposal, name: FigureName): string {
  const value = Number(figureOf(proposal, name) ?? '0');
  return String(Math.abs(value) >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}

function advice(proposal: OrderProposal, words: ProposalWords): string {
  const { offer, consumable, packs, total, currency } = words;
  if (offer === null) return 'No presentation says how it is bought.';
  const added = packs - proposal.packs;
  const from = offer.supplierName === null ? '' : ` from ${offer.supplierName}`;
  const price = total === null ? '' : ` for ${total} ${currency}`;
  if (packs === 0n) {
    switch (proposal.reason) {
      case 'no use expected':
        return 'No use is expected, so nothing is ordered.';
      case 'above the reorder point':
        return 'Nothing is due yet.';
      default:
        return `Nothing can be ordered of ${offer.name} within its limits.`;
    }
  }
  const order = `Order ${packsText(packs)} of ${offer.name}${from}${price}`;
  const upTo = figureOf(proposal, 'order up to') ?? '0';
  const bounds = proposal.bounds.length === 0 ? '' : `; bound by ${proposal.bounds.join(', ')}`;
  if (proposal.packs === 0n) return `${order}: not due yet, taken early to fill the order.`;
  const more = added > 0n ? ` (${packsText(added)} of them early, to fill the order)` : '';
  const level = amount(upTo, consumable.unit);
  return `${order}${more}; the level to order up to is ${level}${bounds}.`;
}

function packsText(packs: bigint): string {
  return counted(Number(packs), 'pack');
}

function counted(count: number, thing: string): string {
  return count === 1 ? `1 ${thing}` : `${count} ${thing}s`;
}

/** What shaped the basket of a supplier, as a sentence. */
export function choiceWords(
  choice: BasketChoice,
  currency: string,
  nameById: (itemId: string) => string,
): string {
  const told = (money: Parameters<typeof formatMoney>[0]) => `${formatMoney(money)} ${currency}`;
  switch (choice.choice) {
    case 'left out for the budget':
      return `${packsText(choice.packs)} of ${nameById(choice.itemId)} left out for the budget.`;
    case 'filled up to the minimum order':
      return `Filled up: ${told(choice.missing)} were missing to the minimum order.`;
    case 'minimum order not reached':
      return `${told(choice.missing)} are missing to the minimum order, and nothing is due soon.`;
    case 'filled up to free freight':
      return (
        `Filled up: ${told(choice.missing)} were missing to free freight; buying early costs ` +
        `${told(choice.costOfFilling)}, freight ${told(choice.freight)}.`
      );
    case 'freight is cheaper than filling up':
      return (
        `Freight of ${told(choice.freight)} costs less than buying early ` +
        `(${told(choice.costOfFilling)}) to reach free freight.`
      );
    case 'free freight not within reach':
      return `${told(choice.missing)} are missing to free freight, and nothing is due soon.`;
  }
}
