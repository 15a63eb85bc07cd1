import type { Text } from '../text.js';
import { CELL_PROBLEMS, SHEET_PROBLEMS } from './file-problems.js';

function filled(words: string, values: readonly string[]): string {
  return words.replace(/\{(\d)\}/g, (_, at: string) => values[Number(at)] ?? '');
}

export const files: Text['files'] = {
  title: 'Dateien',
  lead: 'Holen Sie die Listen herein, die Sie haben, und nehmen Sie das Buch mit.',
  bring: {
    title: 'Eine Liste übernehmen',
    hint: 'Nichts wird behalten, bevor Sie es sagen: Zuerst sehen Sie, was aus jeder Zeile würde.',
    kind: 'Was in der Datei steht',
    chooseKind: 'Bitte wählen',
    empty: 'Eine leere Liste zum Ausfüllen:',
    emptyLabel: (kind, form) => `Leere Liste, ${kind}, ${form}`,
    drop: 'Datei hierher ziehen, oder',
    choose: 'Datei wählen',
    other: 'Andere Datei',
    forms: 'CSV oder XLSX, bis 10 MB und 20 000 Zeilen.',
    checking: 'Die Datei wird gelesen.',
    tooLarge: 'Diese Datei ist größer als 10 MB. Bitte in mehrere teilen.',
  },
  kinds: {
    suppliers: 'Lieferanten und ihre Bedingungen',
    closures: 'Freie Tage der Lieferanten',
    locations: 'Lagerorte',
    consumables: 'Verbrauchsmaterial, Packungen und Preise',
    'kit-parts': 'Teile von Sets',
    'price-lists': 'Preislisten nach Zahl der Packungen',
    planning: 'Bestellplanung je Material',
    substitutes: 'Was für was einspringen darf',
    templates: 'Vorlagen',
    'opening-stock': 'Anfangsbestand',
    'booked-visits': 'Vorgemerkte Besuche',
    book: 'Das ganze Buch (eine Mappe mit einem Blatt für jedes)',
  },
  sheet: {
    columns: 'Spalten',
    columnsHint: 'Welche Spalte was ist. Ändern Sie, was falsch verstanden wurde.',
    column: 'Spalte',
    heading: 'Überschrift in der Datei',
    sample: 'Zum Beispiel',
    as: 'Gelesen als',
    asLabel: (column) => `Spalte ${column} wird gelesen als`,
    unknown: 'Nicht bekannt',
    leaveOut: 'Weglassen',
    leaveAllOut: 'Alles weglassen, was nicht bekannt ist',
    leftOut: (names) => `Nicht gelesen: ${names}`,
    rows: 'Zeilen',
    problem: ({ code, values }) => filled(SHEET_PROBLEMS[code], values),
  },
  fates: { all: 'Alle', new: 'Neu', changed: 'Geändert', same: 'Gleich', error: 'Fehler' },
  fate: { new: 'neu', changed: 'geändert', same: 'gleich', error: 'Fehler' },
  table: { row: 'Zeile', what: 'Was', fate: 'Wird', details: 'Einzelheiten' },
  shown: (shown, all) => `Die ersten ${shown} von ${all} Zeilen werden gezeigt.`,
  nothing: 'nichts',
  problem: ({ code, values, column }, { sheet, row, heading }) => {
    const words = filled(CELL_PROBLEMS[code], values);
    const at = `Blatt „${sheet}“, Zeile ${row}`;
    if (heading === null) return `${at}: Diese Zeile ${words}.`;
    const where = column === null ? '' : `, Spalte ${column}`;
    return `${at}${where} (${heading}): Diese Zelle ${words}.`;
  },
  run: {
    button: (rows) => (rows === 1 ? '1 Zeile übernehmen' : `${rows} Zeilen übernehmen`),
    nothing: 'Alles darin steht schon im Buch.',
    blocked:
      'Bitte die Datei ändern und neu wählen: Solange etwas nicht stimmt, kommt nichts herein.',
    going: 'Wird übernommen',
    progress: (done, total) => `${done} von ${total} Zeilen`,
    done: (added, changed, same) =>
      `Übernommen: ${added} neu, ${changed} geändert, ${same} gleich.`,
  },
  take: {
    title: 'Das Buch mitnehmen',
    hint: 'Was hier geschrieben wird, kann wieder übernommen werden, auch in ein leeres Buch.',
    label: (kind, form) => `${kind} als ${form}`,
  },
  log: {
    title: 'Zuletzt übernommen',
    file: 'Datei',
    kind: 'Was',
    when: 'Wann',
    who: 'Von',
    outcome: 'Was daraus wurde',
    empty: 'Noch wurde nichts übernommen.',
    emptyHint: 'Was Sie übernehmen, steht hier.',
    running: 'läuft',
    broken: 'abgebrochen; nichts davon steht im Buch',
    refused: 'abgelehnt; nichts davon steht im Buch',
  },
  caution:
    'Die Zahlen helfen beim Planen. Gebrauchsanweisung, örtliche Regeln und die Berufsausübung gehen vor.',
};
