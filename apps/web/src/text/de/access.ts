import type { Text } from '../text.js';

export const signIn: Text['signIn'] = {
  title: 'Anmelden',
  name: 'Anmeldename',
  password: 'Passwort',
  submit: 'Anmelden',
  wrong: 'Name oder Passwort stimmt nicht.',
  throttled: (minutes) =>
    minutes <= 1
      ? 'Zu viele Versuche. Dieser Name ist für etwa eine Minute gesperrt.'
      : `Zu viele Versuche. Dieser Name ist für ${minutes} Minuten gesperrt.`,
  ended: 'Ihre Sitzung ist beendet. Nach der Anmeldung geht es dort weiter, wo Sie waren.',
};

export const firstStart: Text['firstStart'] = {
  title: 'Das Buch öffnen',
  lead: 'Dieses Buch ist noch leer. Zu welcher Praxis gehört es, und wem gehört sie?',
  practice: 'Die Praxis',
  practiceName: 'Name der Praxis',
  timeZone: 'Zeitzone',
  timeZoneHint: 'Sie bestimmt, welcher Tag heute ist: für Verfall und Buchungen.',
  currency: 'Währung',
  currencyHint: 'Alle Preise im Buch stehen in ihr. Sie lässt sich später nicht ändern.',
  notation: 'Wie Zähne geschrieben werden',
  notations: { iso: 'ISO zweistellig (11 bis 48)', universal: 'Universal (1 bis 32)' },
  owner: 'Inhaberin oder Inhaber',
  ownerHint: 'Darf alles und legt die anderen Personen an.',
  ownerName: 'Name',
  signInName: 'Anmeldename',
  signInNameHint: 'Kleinbuchstaben, Ziffern und . _ @ + -',
  password: 'Passwort',
  passwordHint: (least) => `Mindestens ${least} Zeichen. Am besten ein paar Wörter.`,
  tooShort: (least) => `Mindestens ${least} Zeichen`,
  submit: 'Das Buch öffnen',
  badLink: 'Dieser Link öffnet das Buch nicht mehr.',
  badLinkHint:
    'Er wurde benutzt, ist zu alt, oder das Buch ist schon offen. Der Dienst nennt einen neuen, wenn er mit leerem Buch startet.',
  toSignIn: 'Zur Anmeldung',
};
