import type { INestApplicationContext } from '@nestjs/common';
import { CreateCostRate } from '#lib/costing';
import type { Actor } from '#lib/platform';
import {
  AddFeeVersion,
  AddPlanTerms,
  CreateFee,
  CreatePlan,
  RecordBalance,
  RecordCharges,
} from '#lib/pricing';
import type { BookReader } from './book-reader.js';
import { demoId } from './dice.js';
import { type DemoTerm, FEES, PLANS, RATES } from './prices.js';
import type { StepKind, StepOf } from './steps.js';
import { templateId } from './templates.js';

type MoneyKind = Extract<
  StepKind,
  'fee' | 'feeVersion' | 'plan' | 'planTerms' | 'costRate' | 'balance' | 'charges'
>;

type MoneyRuns = {
  readonly [K in MoneyKind]: (step: StepOf<K>, key: string) => Promise<unknown>;
};

interface People {
  readonly owner: Actor;
  readonly manager: Actor;
}

/** The steps of the demo that are about money: prices by the owner, the desk by the manager. */
export function moneyRuns(
  app: INestApplicationContext,
  reader: BookReader,
  people: People,
): MoneyRuns {
  return { ...priceRuns(app, reader, people), ...deskRuns(app, reader, people) };
}

function priceRuns(app: INestApplicationContext, reader: BookReader, { owner }: People) {
  const use = { strict: false };
  const createFee = app.get(CreateFee, use);
  const addVersion = app.get(AddFeeVersion, use);
  const createPlan = app.get(CreatePlan, use);
  const addTerms = app.get(AddPlanTerms, use);
  const createRate = app.get(CreateCostRate, use);
  return {
    fee: async ({ payload: { code, validFrom } }, key) => {
      const { name, feeClass, template, reason, fees } = feeOf(code);
      const entry = { code, name, feeClass, templateId: templateId(template), reason };
      return createFee.run(owner, key, { ...entry, validFrom, ...fees[0] });
    },
    feeVersion: async ({ payload: { code, validFrom } }, key) =>
      addVersion.run(owner, key, await reader.feeId(code), { validFrom, ...feeOf(code).fees[1] }),
    plan: async ({ payload: { plan, checkedOn } }, key) => {
      const { terms: _, ...settings } = PLANS[plan];
      return createPlan.run(owner, key, { ...settings, ceilingCheckedOn: checkedOn });
    },
    planTerms: async ({ payload: { plan, term, validFrom } }, key) => {
      const { name, terms } = PLANS[plan];
      const found: DemoTerm | undefined = terms[term];
      if (!found) throw new Error(`${name} has no term ${term}`);
      const { code, ...rest } = found;
      const of = code === undefined ? {} : { feeId: await reader.feeId(code) };
      return addTerms.run(owner, key, await reader.planId(name), { ...of, ...rest, validFrom });
    },
    costRate: async ({ payload: { rate, validFrom } }) => {
      const content = RATES[rate];
      if (!content) throw new Error(`The demo has no rate ${rate}`);
      return createRate.run(owner, { id: demoId('cost rate', rate), validFrom, ...content });
    },
  } satisfies Partial<MoneyRuns>;
}

function deskRuns(app: INestApplicationContext, reader: BookReader, { manager }: People) {
  const recordBalance = app.get(RecordBalance, { strict: false });
  const recordCharges = app.get(RecordCharges, { strict: false });
  return {
    balance: async ({ payload: { plan, ...told } }, key) => {
      const planId = await reader.planId(PLANS[plan].name);
      return recordBalance.run(manager, key, { planId, ...told });
    },
    charges: async ({ payload: { visitId, note, lines } }, key) => {
      const charges = [];
      for (const { plan, stated, ...line } of lines) {
        const planId = plan === undefined ? null : await reader.planId(PLANS[plan].name);
        charges.push({ ...line, planId, ...stated });
      }
      return recordCharges.run(manager, key, { visitId, note, charges });
    },
  } satisfies Partial<MoneyRuns>;
}

function feeOf(code: string) {
  const found = FEES.find((fee) => fee.code === code);
  if (!found) throw new Error(`The demo has no fee ${code}`);
  return found;
}
