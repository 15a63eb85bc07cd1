/** What was asked for the restorations of a visit, and who pays it. */
export const visitCharges = {
  title: 'What was charged',
  hint: 'What was asked for each restoration, and who pays it. It is recorded; no bill is sent from here.',
  reversedHint:
    'The visit was reversed: nothing is charged for it. What was recorded stays to be read.',
  record: 'Record what was charged',
  correct: 'Record or correct',
  columns: {
    fee: 'Fee',
    planPays: 'Plan pays',
    patientPays: 'Patient pays',
    writeOff: 'Write-off',
  },
  together: 'Together',
  law: 'Contracts and local rules say what may be asked of whom; they go before these figures.',
  notRecorded: 'Nothing was recorded.',
  listed: (fee: string, code: string) => `The fee list of that day says ${fee} (${code}).`,
  notListed: 'The fee list has no fee for it.',
  ownAmount: 'An amount of its own',
  basis: (code: string, plan: string | undefined, stated: boolean) => {
    if (plan === undefined)
      return stated ? `${code}, without a plan, as stated.` : `${code}, without a plan.`;
    return `${code}, ${plan}, ${stated ? 'amounts as stated' : 'by the terms of the plan'}.`;
  },
  recordedBy: (who: string, when: string) => `Recorded by ${who} on ${when}.`,
  replaced: (fee: string, plan: string, patient: string, writeOff: string) =>
    `Before: ${fee}, of it plan ${plan}, patient ${patient}, write-off ${writeOff}.`,
  because: (note: string) => `Why it was changed: ${note}`,
  about: (reason: string, template: string) => `${reason}, ${template}`,
  cosmeticHint:
    'Cosmetic: the patient pays it, unless the terms of a plan name this very fee. It stays what it is and is never charged as other work.',
  feeCode: 'Fee of the list',
  feeOf: (code: string, name: string, amount: string) => `${code}, ${name}, ${amount}`,
  noCode: 'none, an amount of its own',
  plan: 'Plan',
  noPlan: 'without a plan',
  deductibleUsed: 'Of it deductible',
  sum: (sum: string) => `Together ${sum}:`,
  fits: 'that is the fee.',
  tooLittle: (amount: string) => `${amount} less than the fee.`,
  tooMuch: (amount: string) => `${amount} more than the fee.`,
  noSum: 'Without a fee nothing is recorded for this restoration.',
  mustBeFee: 'Plan, patient and write-off together must be the fee',
  nothingNew: 'Nothing was changed yet',
  workOut: 'Work out by the plan’s terms',
  workOutHint: 'Or enter the amounts as the plan stated them.',
  left: (plan: string, deductible: string, maximum: string | null) =>
    maximum === null
      ? `${plan}: ${deductible} of the deductible are left afterwards.`
      : `${plan}: ${deductible} of the deductible and ${maximum} of the yearly maximum are left afterwards.`,
  untold:
    'Nobody was told by that day what is left of this plan: enter it first, or enter the amounts',
  enterLeft: 'Enter what was left of the plan',
  why: 'Why it is changed',
  whyHint: 'Stands beside the new figures. The earlier ones stay to be read.',
  save: 'Record',
  done: 'What was charged is recorded.',
  doneOtherwise:
    'Recorded, but the plan had changed meanwhile: please look at the amounts once more.',
};
