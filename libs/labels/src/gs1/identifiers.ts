import type { CharacterSet } from './character-sets.js';
import { IDENTIFIER_TABLE } from './table.js';

/** A run of characters inside the value of an identifier. */
export interface Part {
  readonly set: CharacterSet;
  readonly min: number;
  readonly max: number;
  readonly optional: boolean;
  readonly checks: readonly string[];
}

/** A GS1 application identifier: what may stand behind it and beside it. */
export interface Identifier {
  readonly ai: string;
  readonly title: string;
  readonly parts: readonly Part[];
  readonly min: number;
  readonly max: number;
  /** As in the tables of GS1: N14, X..20, N3+X..9. */
  readonly format: string;
  /** Ends by its length; every other one ends at a separator or at the end of the symbol. */
  readonly predefined: boolean;
  /** Each group must be met by one of its alternatives, whose identifiers must all be there. */
  readonly needs: readonly (readonly (readonly string[])[])[];
  readonly excludes: readonly string[];
  /** If it is the key of a Digital Link: the orders its qualifiers may have in the path. */
  readonly qualifiers: readonly (readonly string[])[] | undefined;
  readonly attribute: boolean;
}

/** Lengths of the values that need no separator, by the first two digits: fixed for ever. */
const PREDEFINED = /^(0[0-4]|1[1-9]|20|3[1-6]|41)/;

const byName = new Map<string, Identifier>();
const lengthByPrefix = new Map<string, number>();

for (const row of IDENTIFIER_TABLE.trim().split('\n')) {
  const [names = '', parts = '', needs = '', excludes = '', link = '', title = ''] = row.split('|');
  for (const ai of expanded(names)) {
    byName.set(ai, identifier(ai, parts, { needs, excludes, link, title }));
    lengthByPrefix.set(ai.slice(0, 2), ai.length);
  }
}

interface Rules {
  readonly needs: string;
  readonly excludes: string;
  readonly link: string;
  readonly title: string;
}

function expanded(names: string): string[] {
  const [first = '', last = first] = names.split('-');
  const names_: string[] = [];
  for (let number = Number(first); number <= Number(last); number += 1) {
    names_.push(String(number).padStart(first.length, '0'));
  }
  return names_;
}

function identifier(ai: string, partsText: string, rules: Rules): Identifier {
  const parts = partsText.split(' ').map(part);
  const { needs, excludes, link, title } = rules;
  return {
    ai,
    title,
    parts,
    min: parts.reduce((sum, { optional, min }) => sum + (optional ? 0 : min), 0),
    max: parts.reduce((sum, { max }) => sum + max, 0),
    format: formatOf(parts),
    predefined: PREDEFINED.test(ai),
    needs: needs === '' ? [] : needs.split(';').map(group),
    excludes: excludes === '' ? [] : excludes.split(','),
    qualifiers: link.startsWith('key') ? orders(link.slice(4)) : undefined,
    attribute: link !== '-',
  };
}

function part(text: string): Part {
  const optional = text.startsWith('[');
  const [shape = '', ...checks] = text.replace(/[[\]]/g, '').split('+');
  const size = shape.slice(1);
  const max = Number(size.replace('..', ''));
  const min = size.startsWith('..') ? 1 : max;
  return { set: shape.charAt(0) as CharacterSet, min, max, optional, checks };
}

/** Neighbouring runs of digits of a fixed length are one format: 7003 is N10. */
function formatOf(parts: readonly Part[]): string {
  const shapes: string[] = [];
  for (const { set, min, max, optional } of parts) {
    const last = shapes.at(-1);
    const digits = last === undefined ? undefined : /^N(\d+)$/.exec(last)?.[1];
    if (set === 'N' && min === max && !optional && digits !== undefined) {
      shapes[shapes.length - 1] = `N${Number(digits) + max}`;
    } else {
      const shape = `${set}${min === max ? '' : '..'}${max}`;
      shapes.push(optional ? `[${shape}]` : shape);
    }
  }
  return shapes.join('+');
}

function group(text: string): string[][] {
  return text.split(',').map((alternative) => alternative.split('+'));
}

function orders(text: string): string[][] {
  return text === '' ? [[]] : text.split('/').map((order) => order.split('.'));
}

export function findIdentifier(ai: string): Identifier | undefined {
  return byName.get(ai);
}

export function allIdentifiers(): readonly Identifier[] {
  return [...byName.values()];
}

/** How many digits the identifiers that begin with these two digits have; undefined if none does. */
export function identifierLength(firstTwoDigits: string): number | undefined {
  return lengthByPrefix.get(firstTwoDigits);
}

/** The identifier that a text begins with at a position. */
export function identifierAt(text: string, at: number): Identifier | undefined {
  const length = lengthByPrefix.get(text.slice(at, at + 2));
  return length === undefined ? undefined : byName.get(text.slice(at, at + length));
}
