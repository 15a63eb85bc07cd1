import type { Text } from '../text.js';

export const setupMessages: Text['setupMessages'] = {
  title: 'Nachrichten',
  lead: 'Jemandem sagen, was zu tun ist, ohne dass er nachsieht. Beide Wege sind aus, bis Sie sie einschalten, und jede Meldung kommt einmal.',
  digest: 'Tägliche Mail',
  digestHint: 'Einmal am Tag, mit dem, was neu ist. Ist nichts neu, kommt keine Mail.',
  noServer:
    'Der Dienst wurde ohne Mailserver gestartet: SMTP_URL (und MAIL_FROM) setzen und neu starten.',
  digestOn: 'Die tägliche Mail senden',
  digestTo: 'An',
  digestToHint: 'Eine E-Mail-Adresse je Zeile.',
  hour: 'Um',
  from: (hour) => `${hour.padStart(2, '0')}:00`,
  language: 'Auf',
  saveDigest: 'Tägliche Mail speichern',
  webhook: 'Nachricht an ein anderes Programm',
  webhookHint:
    'Sobald etwas auftritt, als JSON über HTTPS, signiert nach der Spezifikation Standard Webhooks.',
  webhookOn: 'Nachrichten senden',
  address: 'Adresse',
  secret: 'Schlüssel der Signaturen:',
  newSecret: 'Einen neuen Schlüssel machen; der alte gilt nicht mehr',
  saveWebhook: 'Adresse speichern',
  saved: 'Gespeichert.',
  trial: 'Probenachricht senden',
  arrived: 'Die Probenachricht ist angekommen.',
  failed: (why) => `Die Probenachricht ist nicht angekommen: ${why}`,
  sent: 'Was hinausging',
  nothingSent: 'Noch nichts.',
  columns: { made: 'Erstellt', way: 'Weg', to: 'An', alerts: 'Meldungen', state: 'Stand' },
  channels: { digest: 'Tägliche Mail', webhook: 'Anderes Programm' },
  states: { waiting: 'Wartet', sent: 'Angekommen', 'given up': 'Aufgegeben' },
};
