import { addMonths } from '#lib/platform';
import { Dice } from './dice.js';
import { type ChargeLine, FEES, PLANS, type PlanKey, RATES } from './prices.js';
import type { DemoRestoration, Step, VisitPayload } from './steps.js';
import { templateId } from './templates.js';
import type { World } from './world.js';

/** From so many months ago on the practice records what it charged; before that the fee list counts. */
const MONTHS_CHARGED = 2;
const MONTHS_SINCE_RISE = 10;

/** Fees, plans and the rates of the chairs, and when they rose. */
export function priceList(today: string, date: string): Step[] {
  const rise = `${addMonths(today, -MONTHS_SINCE_RISE).slice(0, 7)}-01`;
  const steps: Step[] = [];
  for (const { code } of FEES) {
    steps.push({ date, kind: 'fee', key: `fee/${code}`, payload: { code, validFrom: date } });
    const payload = { code, validFrom: rise };
    steps.push({ date, kind: 'feeVersion', key: `fee-version/${code}`, payload });
  }
  for (const plan of Object.keys(PLANS) as PlanKey[]) {
    const payload = { plan, checkedOn: date };
    steps.push({ date, kind: 'plan', key: `plan/${plan}`, payload });
    PLANS[plan].terms.forEach((_, term) => {
      const key = `plan-terms/${plan}/${term}`;
      steps.push({ date, kind: 'planTerms', key, payload: { plan, term, validFrom: date } });
    });
  }
  RATES.forEach((_, rate) => {
    const payload = { rate, validFrom: rate === 0 ? date : rise };
    steps.push({ date, kind: 'costRate', key: `cost-rate/${rate}`, payload });
  });
  return steps;
}

/** A patient has the same plan at every visit; many have none. */
function planOf(chart: string): PlanKey | null {
  return new Dice(`plan of ${chart}`).weighted<PlanKey | null>([
    [42, 'larkfield'],
    [20, 'pinewater'],
    [38, null],
  ]);
}

/** What is done at the desk after a visit: ask the plan what is left, charge, now and then correct. */
export function chargeVisit(world: World, visit: VisitPayload): void {
  const { id, visitedOn: date, chartReference: chart } = visit;
  // Dice of its own: what is charged changes nothing of what is done at the chair.
  const dice = new Dice(`charges of ${id}`);
  if (date < addMonths(world.today, -MONTHS_CHARGED) || dice.chance(0.07)) return;
  const plan = planOf(chart);
  if (plan !== null && !world.told.has(chart)) {
    world.told.add(chart);
    const left = leftOf(plan, dice);
    const payload = { plan, chartReference: chart, asOf: date, ...left };
    world.steps.push({ date, kind: 'balance', key: `balance/${chart}`, payload });
  }
  const lines = visit.restorations.map((each) => lineOf(dice, each, plan));
  const payload = { visitId: id, note: null, lines };
  world.steps.push({ date, kind: 'charges', key: `charges/${id}`, payload });
  const [first] = visit.restorations;
  if (plan !== null || !first || !dice.chance(0.03)) return;
  world.steps.push({
    date,
    kind: 'charges',
    key: `charges/${id}/again`,
    payload: {
      visitId: id,
      note: 'A lower fee was agreed before the visit.',
      lines: [{ restorationId: first.id, fee: '80.00' }],
    },
  });
}

function leftOf(plan: PlanKey, dice: Dice) {
  const { deductible, yearlyMaximum } = PLANS[plan];
  return {
    deductibleLeft: dice.pick(['0', '0', '25', deductible]),
    maximumLeft: String(Math.round((Number(yearlyMaximum) * dice.int(1, 10)) / 10)),
  };
}

const [ONE_SURFACE, WHITE_SPOT] = [templateId('back-one'), templateId('white-spot')];

function lineOf(dice: Dice, restoration: DemoRestoration, plan: PlanKey | null): ChargeLine {
  const line = { restorationId: restoration.id, ...(plan === null ? {} : { plan }) };
  if (restoration.templateId === WHITE_SPOT) return { ...line, fee: `${10 * dice.int(12, 16)}.00` };
  if (plan !== 'larkfield' || restoration.templateId !== ONE_SURFACE || !dice.chance(0.08)) {
    return line;
  }
  const stated = { planPays: '58.40', patientPays: '25.60', writeOff: '13.00' };
  return { ...line, fee: '97.00', stated };
}
