import type { Text } from '../text.js';

export const visitCharges: Text['visitCharges'] = {
  title: 'Was berechnet wurde',
  hint: 'Was für jede Restauration verlangt wurde und wer es zahlt. Es wird festgehalten; eine Rechnung geht von hier nicht hinaus.',
  reversedHint:
    'Der Besuch wurde storniert: für ihn wird nichts berechnet. Was eingetragen war, bleibt lesbar.',
  record: 'Eintragen, was berechnet wurde',
  correct: 'Eintragen oder berichtigen',
  columns: {
    fee: 'Honorar',
    planPays: 'Versicherung zahlt',
    patientPays: 'Patient zahlt',
    writeOff: 'Nachlass',
  },
  together: 'Zusammen',
  law: 'Verträge und örtliche Regeln sagen, was von wem verlangt werden darf; sie gehen diesen Zahlen vor.',
  notRecorded: 'Es wurde nichts eingetragen.',
  listed: (fee, code) => `Die Honorarliste jenes Tages sagt ${fee} (${code}).`,
  notListed: 'Die Honorarliste hat dafür kein Honorar.',
  ownAmount: 'Ein eigener Betrag',
  basis: (code, plan, stated) => {
    if (plan === undefined)
      return stated ? `${code}, ohne Versicherung, wie angegeben.` : `${code}, ohne Versicherung.`;
    return `${code}, ${plan}, ${stated ? 'Beträge wie angegeben' : 'nach den Bedingungen'}.`;
  },
  recordedBy: (who, when) => `Eingetragen von ${who} am ${when}.`,
  replaced: (fee, plan, patient, writeOff) =>
    `Vorher: ${fee}, davon Versicherung ${plan}, Patient ${patient}, Nachlass ${writeOff}.`,
  because: (note) => `Warum es geändert wurde: ${note}`,
  about: (reason, template) => `${reason}, ${template}`,
  cosmeticHint:
    'Kosmetisch: der Patient zahlt es, außer die Bedingungen einer Versicherung nennen genau dieses Honorar. Es bleibt, was es ist, und wird nie als andere Arbeit berechnet.',
  feeCode: 'Honorar der Liste',
  feeOf: (code, name, amount) => `${code}, ${name}, ${amount}`,
  noCode: 'keines, ein eigener Betrag',
  plan: 'Versicherung',
  noPlan: 'ohne Versicherung',
  deductibleUsed: 'Davon Selbstbehalt',
  sum: (sum) => `Zusammen ${sum}:`,
  fits: 'das ist das Honorar.',
  tooLittle: (amount) => `${amount} weniger als das Honorar.`,
  tooMuch: (amount) => `${amount} mehr als das Honorar.`,
  noSum: 'Ohne Honorar wird für diese Restauration nichts eingetragen.',
  mustBeFee: 'Versicherung, Patient und Nachlass müssen zusammen das Honorar ergeben',
  nothingNew: 'Noch wurde nichts geändert',
  workOut: 'Nach den Bedingungen rechnen',
  workOutHint: 'Oder die Beträge eintragen, wie die Versicherung sie genannt hat.',
  left: (plan, deductible, maximum) =>
    maximum === null
      ? `${plan}: danach sind vom Selbstbehalt ${deductible} übrig.`
      : `${plan}: danach sind vom Selbstbehalt ${deductible} und vom Höchstbetrag des Jahres ${maximum} übrig.`,
  untold:
    'Bis zu jenem Tag ist nicht bekannt, was von dieser Versicherung übrig war: erst das eintragen, oder die Beträge',
  enterLeft: 'Eintragen, was übrig war',
  why: 'Warum es geändert wird',
  whyHint: 'Steht neben den neuen Zahlen. Die früheren bleiben lesbar.',
  save: 'Eintragen',
  done: 'Eingetragen, was berechnet wurde.',
  doneOtherwise:
    'Eingetragen, doch bei der Versicherung hat sich inzwischen etwas geändert: bitte die Beträge noch einmal ansehen.',
};
