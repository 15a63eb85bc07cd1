/** The service speaks English about fields. These are its sentences, and ours for them. */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/^must be a day that exists.*/, 'muss ein Datum sein, das es gibt'],
  [/^must be at least (\d+) characters$/, 'muss mindestens $1 Zeichen haben'],
  [/^must be (\d+) to (\d+) characters.*/, 'muss $1 bis $2 Zeichen haben'],
  [/^must be at least (.+)$/, 'muss mindestens $1 sein'],
  [/^must be at most (.+)$/, 'darf höchstens $1 sein'],
  [/^must be a whole number.*/, 'muss eine ganze Zahl sein'],
  [/^must be a decimal.*/, 'muss eine Zahl sein, die ins Buch passt'],
  [/^must be text$/, 'bitte ausfüllen'],
  [/^must be one of (.+)$/, 'muss eines sein von $1'],
  [/^must not be in the past$/, 'darf nicht vergangen sein'],
  [/^must not be in the future.*/, 'darf nicht in der Zukunft liegen'],
  [/^must differ from the sign-in name$/, 'muss sich vom Anmeldenamen unterscheiden'],
  [/^is missing$/, 'fehlt'],
  [/^is already in use$/, 'ist schon vergeben'],
  [/^is taken; choose another$/, 'ist schon vergeben; bitte anders wählen'],
  [/^cannot change after the first delivery$/, 'bleibt nach der ersten Lieferung, wie es ist'],
  [/^does not fit the presentation (.+)$/, 'passt nicht zur Packung $1'],
  [/^lies inside this location$/, 'liegt selbst in diesem Ort'],
  [/^would make more than (\d+) levels$/, 'ergäbe mehr als $1 Ebenen'],
  [/^must be the name of a time zone.*/, 'muss der Name einer Zeitzone sein'],
  [/^names no .*/, 'gibt es in dieser Praxis nicht'],
  [/^must be 2 to 120 letters.*/, '2 bis 120 Zeichen: a-z, Ziffern, . _ @ + -; vorn ein Buchstabe'],
];

export function fieldWords(message: string): string {
  const [pattern, words] = WORDS.find(([known]) => known.test(message)) ?? [];
  const sentence = pattern && words ? message.replace(pattern, words) : message;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
