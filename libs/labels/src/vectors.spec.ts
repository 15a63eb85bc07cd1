import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from '@jest/globals';
import * as labels from './index.js';

/**
 * Examples of the GS1 reference tests and dictionary, of the HIBC supplier standard and of the FDA,
 * each with the place it was taken from. A few were worked out by hand; their source says so.
 */
type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };
type Fields = { readonly [name: string]: Json };
type Vector = readonly [kind: string, input: Json, expected: Fields, source: number];

const file = join(process.cwd(), 'libs/labels/src/vectors.json');
const { vectors } = JSON.parse(readFileSync(file, 'utf8')) as { vectors: readonly Vector[] };

const YEAR = 2026;

function text(value: Json | undefined): string {
  if (typeof value !== 'string') throw new Error(`no text: ${JSON.stringify(value)}`);
  return value;
}

function fields(value: Json): Fields {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Error('no object');
  return value as Fields;
}

const kebab = (code: string) => code.replaceAll('_', '-');

function failure(problem: labels.LabelProblem): Fields {
  return { ok: false, error: kebab(problem.code) };
}

function plain(elements: readonly labels.Element[]): Json {
  return elements.map(({ identifier, value }) => ({ ai: identifier.ai, value }));
}

type Elements = ReturnType<typeof labels.readElementString>;

function elementsOf(read: Elements): Fields {
  return read.ok ? { ok: true, elements: plain(read.elements) } : failure(read.problem);
}

function bracketed(input: Json | undefined): readonly labels.Element[] {
  const read = labels.readBracketed(text(input), YEAR);
  if (!read.ok) throw new Error(read.problem.message);
  return read.elements;
}

function finding(found: { code: string } | undefined, shorter: string): Fields {
  if (!found) return { valid: true };
  const code = kebab(found.code);
  return { valid: false, error: code.startsWith('too-') ? shorter + code : code };
}

function hibc(read: ReturnType<typeof labels.readHibc>): Fields {
  if (!read.ok) {
    const { code, expected } = read.problem;
    const name = code === 'link_character' ? 'expectedLink' : 'expectedCheck';
    return { ok: false, error: kebab(code), ...(expected === null ? {} : { [name]: expected }) };
  }
  const { structure, check, product, link, production } = read.symbol;
  const said = production ?? {};
  const expiry = production?.expiry;
  const { date, month, hour, format } = expiry ?? {};
  return present({
    ok: true,
    structure,
    check,
    link,
    ...(product ?? {}),
    ...said,
    expiry: expiry ? present({ date, month: date == null ? month : null, hour, format }) : null,
  });
}

function present(record: Record<string, unknown>): Fields {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value != null)) as Fields;
}

const IDS: Record<string, string> = { DataMatrix: 'Data Matrix' };

function scan(input: Json): Fields {
  const read = labels.readScan(text(input), { currentYear: YEAR });
  if (!read.ok) return failure(read.problem);
  const { carrier, content } = read;
  if (content === 'plain') return { ok: true, carrier, content, text: read.text };
  return { ok: true, carrier, content, elements: plain(read.elements) };
}

function udi(input: Json): Fields {
  const read = labels.readLabel(text(input), { currentYear: YEAR });
  if (!read.ok) return failure(read.problem);
  const { label } = read;
  const monthOnly = label.notes.includes('day_not_stated');
  return present({
    issuer: label.standard === 'HIBC' ? 'HIBCC' : 'GS1',
    deviceIdentifier: label.deviceIdentifier,
    lot: label.lot,
    serial: label.serial,
    quantity: label.quantity,
    manufactured: label.productionDate,
    ...(monthOnly ? { expiryMonth: label.expiry?.slice(0, 7) } : { expiry: label.expiry }),
  });
}

function link(input: Json): Fields {
  if (typeof input === 'string') return elementsOf(labels.readDigitalLink(input, YEAR));
  const { uri, allowShortGtin } = fields(input);
  const options = { allowShortGtin: allowShortGtin === true };
  return elementsOf(labels.readDigitalLink(text(uri), YEAR, options));
}

function builtLink(input: Json): Fields {
  const { stem, elements } = fields(input);
  const written = labels.writeDigitalLink(
    bracketed(elements),
    stem === null ? undefined : text(stem),
  );
  return written.ok ? { uri: written.uri } : { error: kebab(written.problem.code) };
}

function bracketedRead(input: Json): Fields {
  const read = labels.readBracketed(text(input), YEAR);
  if (!read.ok) return failure(read.problem);
  return { ...elementsOf(read), elementString: labels.writeElementString(read.elements) };
}

function format(input: Json): Fields {
  const identifier = labels.findIdentifier(text(input));
  return present({
    format: identifier?.format,
    separatorNeededAfter: identifier && !identifier.predefined,
  });
}

function checkDigit(input: Json): Fields {
  const digit = labels.checkDigit(text(input));
  return { checkDigit: digit, full: text(input) + digit };
}

function digitValid(input: Json): Fields {
  if (labels.firstForeign(text(input), 'N') >= 0) {
    return { valid: false, error: 'non-digit-character' };
  }
  const right = labels.wrongCheckDigit(text(input));
  if (right === undefined) return { valid: true };
  return { valid: false, error: 'incorrect-check-digit', correctCheckDigit: right };
}

function related(input: Json): Fields {
  const { elements, rule } = fields(input);
  const wrong = labels.relationProblem(bracketed(elements), [rule as labels.RelationRule]);
  return wrong ? { valid: false, error: kebab(wrong.problem.code) } : { valid: true };
}

function lastDay(input: Json): Fields {
  const { ai, value, currentYear } = fields(input);
  const read = labels.readLabel(`(${text(ai)})${text(value)}`, {
    currentYear: Number(currentYear),
  });
  if (!read.ok) return failure(read.problem);
  return { date: read.label.expiry ?? read.label.productionDate };
}

function detected(input: Json): Fields {
  const { issuer, carrier, payload } = labels.detectLabel(text(input));
  return present({ issuer, symbology: IDS[carrier ?? ''] ?? carrier, payload });
}

function printed(input: Json, titles: boolean): Fields {
  const read = text(input).startsWith('(')
    ? labels.readBracketed(text(input), YEAR)
    : labels.readElementString(text(input), YEAR);
  return read.ok ? { hri: labels.printedLines(read.elements, { titles }) } : failure(read.problem);
}

const dated = (input: Json, day00: boolean) =>
  finding(labels.dateFinding(text(input), { yearDigits: 2, day00 }, YEAR), 'date-');

const KINDS: Record<string, (input: Json) => Fields> = {
  'ai-association': related,
  'ai-format': format,
  'ai-length-by-prefix': (input) =>
    present(
      Object.fromEntries(
        (input as readonly string[]).map((two) => [two, labels.identifierLength(two)]),
      ),
    ),
  'bracketed-parse': bracketedRead,
  'carrier-detect': detected,
  century: (input) => {
    const { yy, currentYear } = fields(input);
    return { year: labels.yearOf(Number(yy), Number(currentYear)) };
  },
  'charset-82': (input) =>
    labels.firstForeign(text(input), 'X') < 0
      ? { valid: true }
      : { valid: false, error: 'invalid-cset82-character' },
  'check-character': (input) => ({ check: labels.checkCharacter(text(input)) }),
  'check-digit-compute': checkDigit,
  'check-digit-validate': digitValid,
  'concatenated-parse': (input) => hibc(labels.readHibc(text(input), YEAR)),
  'date-yymmdd-day-required': (input) => dated(input, false),
  'date-yymmdd-day00-allowed': (input) => dated(input, true),
  'day00-to-last-day': lastDay,
  'digital-link-build': builtLink,
  'digital-link-escape': (input) => ({
    path: labels.escapeLink(text(input), 'path'),
    query: labels.escapeLink(text(input), 'query'),
  }),
  'digital-link-parse': link,
  'digital-link-unescape': (input) => ({
    path: labels.unescapeLink(text(input), 'path'),
    query: labels.unescapeLink(text(input), 'query'),
  }),
  'element-string-parse': (input) => elementsOf(labels.readElementString(text(input), YEAR)),
  'gtin-normalise-14': (input) => {
    const read = labels.readGtin(text(input));
    return read.ok ? { gtin14: read.gtin14 } : failure(read.problem);
  },
  hri: (input) => printed(input, false),
  'hri-with-titles': (input) => printed(input, true),
  'label-date-format': (input) => ({ valid: labels.isPrintedDate(text(input)) }),
  'pair-parse': (input) => hibc(labels.readHibcPair(input as [string, string], YEAR)),
  'primary-parse': (input) => hibc(labels.readHibc(text(input), YEAR)),
  'scan-data-generate': (input) => {
    const { carrier, elementString } = fields(input);
    return present({ scanData: labels.writeScan(carrier as labels.Carrier, text(elementString)) });
  },
  'scan-data-parse': scan,
  'secondary-parse': (input) => hibc(labels.readHibc(text(input), YEAR)),
  'time-hhmm': (input) => finding(labels.timeFinding(text(input)), 'hour-with-minute-'),
  'udi-normalise': udi,
};

/** An example names only some of the fields; of those, all must be right. */
function asExpected(actual: Json | undefined, expected: Json): Json | undefined {
  if (typeof expected !== 'object' || expected === null || Array.isArray(expected)) return actual;
  if (typeof actual !== 'object' || actual === null || Array.isArray(actual)) return actual;
  const all = actual as Fields;
  const names = Object.entries(expected as Fields);
  return Object.fromEntries(
    names.map(([name, value]) => [name, asExpected(all[name], value) ?? null]),
  );
}

describe('published examples', () => {
  const kinds = [...new Set(vectors.map(([kind]) => kind))];
  test.each(kinds)('%s', (kind) => {
    const read = KINDS[kind];
    if (!read) throw new Error(`no test for ${kind}`);
    const wrong = vectors.flatMap(([of, input, expected, source]) => {
      if (of !== kind) return [];
      const actual = asExpected(read(input), expected);
      return isDeepStrictEqual(actual, expected) ? [] : [{ input, expected, actual, source }];
    });
    expect(wrong).toEqual([]);
  });
});
