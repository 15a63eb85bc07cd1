import { firstForeign } from './gs1/character-sets.js';
import { findIdentifier } from './gs1/identifiers.js';
import type { Element } from './gs1/values.js';
import { writeBracketed, writeElementString } from './gs1/write.js';
import type { Label } from './label.js';

/** What a practice marks with a symbol of its own. */
export const OWN_SUBJECTS = ['location', 'lot', 'container'] as const;

export type OwnSubjectKind = (typeof OWN_SUBJECTS)[number];

export interface OwnSubject {
  readonly kind: OwnSubjectKind;
  /** The id (UUID) of the location, the lot, or the holding that is the container. */
  readonly id: string;
}

export interface OwnSymbol extends OwnSubject {
  /** Only where the label stands on the very pack that the number was given to. */
  readonly gtin14?: string | null;
  readonly lot?: string | null;
  /** The last day by the maker's label, YYYY-MM-DD. */
  readonly expiry?: string | null;
}

export interface WrittenSymbol {
  /** For the symbol; separators are the character U+001D. */
  readonly elementString: string;
  /** For the eye: the same in brackets. */
  readonly bracketed: string;
}

/** Company internal information (GS1 General Specifications, AIs 91 to 99): for this practice only. */
const INTERNAL = '91';
const UUID_DIGITS = 39; // 2^128 has 39 decimal digits
const LARGEST_UUID = (1n << 128n) - 1n;
const LONGEST_LOT = 20;

/**
 * The symbol of something of the practice's own: (91), one digit for what it is (its place in
 * OWN_SUBJECTS, from 1) and the id as 39 decimal digits. Digits are the shortest in a Data Matrix and
 * the same on every keyboard. With a GTIN, (01), (17) and (10) stand before it; without one they may
 * not, because both belong to a trade item (the dictionary's rule `req=01`).
 */
export function writeOwnSymbol({ kind, id, gtin14, lot, expiry }: OwnSymbol): WrittenSymbol {
  const number = BigInt(`0x${id.replaceAll('-', '')}`);
  const own = `${OWN_SUBJECTS.indexOf(kind) + 1}${number.toString().padStart(UUID_DIGITS, '0')}`;
  const elements: Element[] = [];
  if (gtin14) {
    elements.push(element('01', gtin14));
    if (expiry) elements.push(element('17', expiry.slice(2).replaceAll('-', '')));
    if (lot && isLot(lot)) elements.push(element('10', lot));
  }
  elements.push(element(INTERNAL, own));
  return { elementString: writeElementString(elements), bracketed: writeBracketed(elements) };
}

/** What a label of the practice's own stands for; undefined for everybody else's labels. */
export function ownSubject({ standard, others }: Label): OwnSubject | undefined {
  if (standard !== 'GS1') return undefined;
  const value = others.find(({ identifier }) => identifier === INTERNAL)?.value ?? '';
  if (value.length !== UUID_DIGITS + 1 || firstForeign(value, 'N') >= 0) return undefined;
  const kind = OWN_SUBJECTS[Number(value[0]) - 1];
  const number = BigInt(value.slice(1));
  if (!kind || number > LARGEST_UUID) return undefined;
  const hex = number.toString(16).padStart(32, '0');
  const id = hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
  return { kind, id };
}

function isLot(lot: string): boolean {
  return lot.length <= LONGEST_LOT && firstForeign(lot, 'X') < 0;
}

function element(ai: string, value: string): Element {
  const identifier = findIdentifier(ai);
  if (!identifier) throw new Error(`The table of identifiers has no (${ai})`);
  return { identifier, value, at: 0 };
}
