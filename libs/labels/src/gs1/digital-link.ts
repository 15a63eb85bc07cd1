import { type Failed, failed, type Result } from '../problem.js';
import { isDigits, shown } from './character-sets.js';
import type { Elements } from './element-string.js';
import { findIdentifier, type Identifier } from './identifiers.js';
import { type LinkPlace, unescapeLink } from './percent.js';
import { type Element, lengthProblem, valueProblem } from './values.js';

export interface LinkOptions {
  /** GTINs of 8, 12 or 13 digits, which links of the first years have. */
  readonly allowShortGtin?: boolean;
}

const SCHEME = /^(https?|HTTPS?):\/\//;
const FOREIGN_TO_URI = /[^A-Za-z0-9\-._~:/?#[\]@!$&'()*+,;=%]/;
const FOREIGN_TO_DOMAIN = /[_~?#@!$&'()*+,;=%]/;
const SHORT_GTINS = [8, 12, 13];

export function isLink(text: string): boolean {
  return /^https?:\/\//i.test(text);
}

/** A link by the rules: a scheme in letters of both cases is none, but plain text. */
export function isLinkOfOneCase(text: string): boolean {
  return SCHEME.test(text);
}

/** Reads a GS1 Digital Link URI: what stands in the path first, then the attributes of the query. */
export function readDigitalLink(
  uri: string,
  currentYear: number,
  options: LinkOptions = {},
): Elements {
  const cut = cutUp(uri);
  if (!cut.ok) return cut;
  const inPath = pathElements(cut.path, cut.pathAt, options);
  if (!inPath.ok) return inPath;
  const inQuery = queryElements(cut.query, cut.queryAt, options);
  if (!inQuery.ok) return inQuery;
  const wrong =
    orderProblem(inPath.elements) ?? attributeProblem(inPath.elements, inQuery.elements);
  if (wrong) return wrong;
  const elements = [...inPath.elements, ...inQuery.elements];
  for (const element of elements) {
    const problem = valueProblem(element, currentYear);
    if (problem) return asWritten(problem, element, uri);
  }
  return { ok: true, elements };
}

/** The place of a problem inside a value, counted in what is written: "%2F" is three characters. */
function asWritten({ problem }: Failed, { at, value }: Element, uri: string): Failed {
  const end = at + Math.max(0, uri.slice(at).search(/[/?&#]|$/));
  const padding = value.length - unescapeLink(uri.slice(at, end), 'path').length;
  let position = at;
  for (let left = problem.position - at - padding; left > 0 && position < end; left -= 1) {
    position += /^%[0-9A-Fa-f]{2}/.test(uri.slice(position, position + 3)) ? 3 : 1;
  }
  return { ok: false, problem: { ...problem, position } };
}

interface Cut {
  readonly path: string;
  readonly pathAt: number;
  readonly query: string;
  readonly queryAt: number;
}

function cutUp(uri: string): Result<Cut> {
  const foreign = uri.search(FOREIGN_TO_URI);
  if (foreign >= 0) {
    const sentence = `A web address cannot hold ${shown(uri.charAt(foreign))}.`;
    return failed('illegal_uri_character', foreign, sentence);
  }
  const scheme = SCHEME.exec(uri)?.[0];
  if (!scheme) {
    return failed('malformed_uri', 0, 'It must begin with https:// or http://, not mixed in case.');
  }
  const pathAt = uri.indexOf('/', scheme.length);
  if (pathAt <= scheme.length) {
    return failed('malformed_uri', scheme.length, 'The address has no domain or no path.');
  }
  const odd = uri.slice(scheme.length, pathAt).search(FOREIGN_TO_DOMAIN);
  if (odd >= 0) {
    const at = scheme.length + odd;
    return failed('illegal_domain', at, `A domain cannot hold ${shown(uri.charAt(at))}.`);
  }
  const fragment = uri.indexOf('#', pathAt);
  const end = fragment < 0 ? uri.length : fragment;
  const mark = uri.slice(0, end).indexOf('?', pathAt);
  const pathEnd = mark < 0 ? end : mark;
  const queryAt = Math.min(end, pathEnd + 1);
  return {
    ok: true,
    path: uri.slice(pathAt, pathEnd),
    pathAt,
    query: uri.slice(queryAt, end),
    queryAt,
  };
}

interface Segment {
  readonly text: string;
  readonly at: number;
}

function segments(path: string, pathAt: number): Segment[] {
  let at = pathAt;
  return path.split('/').map((text) => {
    const segment = { text, at };
    at += text.length + 1;
    return segment;
  });
}

/** Goes back from the end, pair by pair, until a pair holds a key. */
function pathElements(path: string, pathAt: number, options: LinkOptions): Elements {
  const all = segments(path, pathAt);
  let start = all.length - 2;
  while (start >= 1) {
    const identifier = findIdentifier(all[start]?.text ?? '');
    if (!identifier) break;
    if (identifier.qualifiers) return elementsFrom(all.slice(start), options);
    start -= 2;
  }
  if (looksCompressed(all)) {
    const sentence =
      'This looks like a compressed link; only links that spell out their data are read.';
    return failed('compressed_link', all.at(-1)?.at ?? pathAt, sentence);
  }
  return keyless(all, pathAt);
}

/** Names of the first edition of the standard; since 1.2, identifiers are numbers only. */
const NAMES =
  /^(cpid|cpsn|cpv|gcn|gdti|giai|ginc|gln|glnx|gmn|grai|gsin|gsrnp?|gtin|itip|lot|party|refno|ser|srin|sscc)$/;

function keyless(all: readonly Segment[], pathAt: number): Failed {
  const last = all.at(-1);
  if (last?.text === '' && all.length > 2) {
    return failed('no_primary_key', last.at, 'The path of the link ends in a slash.');
  }
  const named = all.find(({ text }) => NAMES.test(text));
  if (named) {
    const sentence = `The link says "${named.text}"; identifiers are read as numbers, such as /01/.`;
    return failed('no_primary_key', named.at, sentence);
  }
  const sentence = 'The path of the link holds no GS1 key, such as /01/ and a GTIN.';
  return failed('no_primary_key', pathAt, sentence);
}

/** One last word of letters of both cases and digits, as compression makes it. */
function looksCompressed(all: readonly Segment[]): boolean {
  const last = all.at(-1)?.text ?? '';
  return /^[A-Za-z0-9_-]{10,}$/.test(last) && [/[A-Z]/, /[a-z]/, /\d/].every((r) => r.test(last));
}

function elementsFrom(pairs: readonly Segment[], options: LinkOptions): Elements {
  const elements: Element[] = [];
  for (let index = 0; index + 1 < pairs.length; index += 2) {
    const [name, value] = [pairs[index], pairs[index + 1]];
    const identifier = findIdentifier(name?.text ?? '');
    if (!identifier || !value) continue;
    const made = elementOf(identifier, value, 'path', options);
    if (!made.ok) return made;
    elements.push(made.element);
  }
  return { ok: true, elements };
}

function queryElements(query: string, queryAt: number, options: LinkOptions): Elements {
  const elements: Element[] = [];
  let at = queryAt;
  for (const parameter of query.split('&')) {
    const equals = parameter.indexOf('=');
    const name = parameter.slice(0, Math.max(0, equals));
    if (isDigits(name)) {
      const identifier = findIdentifier(name);
      if (!identifier) {
        const sentence = `There is no application identifier (${name}).`;
        return failed('unknown_ai', at, sentence, { identifier: name });
      }
      const value = { text: parameter.slice(equals + 1), at: at + equals + 1 };
      const made = elementOf(identifier, value, 'query', options);
      if (!made.ok) return made;
      elements.push(made.element);
    }
    at += parameter.length + 1;
  }
  return { ok: true, elements };
}

function elementOf(
  identifier: Identifier,
  { text, at }: Segment,
  place: LinkPlace,
  { allowShortGtin }: LinkOptions,
): Result<{ readonly element: Element }> {
  const { ai } = identifier;
  if (text === '') {
    return failed('empty_value', at, `Nothing stands behind (${ai}).`, { identifier: ai });
  }
  let value = unescapeLink(text, place);
  if (value.includes('\0')) {
    const sentence = `(${ai}) holds the character %00.`;
    return failed('illegal_null_character', at + text.indexOf('%00'), sentence, { identifier: ai });
  }
  if (allowShortGtin && ai === '01' && SHORT_GTINS.includes(value.length)) {
    value = value.padStart(14, '0');
  }
  const element = { identifier, value, at };
  return lengthProblem(element) ?? { ok: true, element };
}

function orderProblem(path: readonly Element[]): Failed | undefined {
  const [key, ...rest] = path.map(({ identifier }) => identifier);
  const orders = key?.qualifiers ?? [];
  if (orders.some((order) => inOrder(rest, order))) return undefined;
  const wanted = orders.map((order) => order.map((ai) => `(${ai})`).join(', ')).join(' or ');
  const sentence = `Behind (${key?.ai}) the path may hold only: ${wanted || 'nothing'}, in this order.`;
  return failed('wrong_path_order', path[1]?.at ?? 0, sentence, { identifier: key?.ai ?? null });
}

function inOrder(identifiers: readonly Identifier[], order: readonly string[]): boolean {
  let next = 0;
  for (const { ai } of identifiers) {
    const place = order.indexOf(ai, next);
    if (place < 0) return false;
    next = place + 1;
  }
  return true;
}

function attributeProblem(path: readonly Element[], query: readonly Element[]): Failed | undefined {
  const seen = new Set(path.map(({ identifier }) => identifier.ai));
  const orders = path[0]?.identifier.qualifiers ?? [];
  const inPath = path.slice(1).map(({ identifier }) => identifier);
  for (const { identifier, at } of query) {
    const { ai } = identifier;
    if (seen.has(ai)) {
      return failed('duplicate_ai', at, `(${ai}) is in the link twice.`, { identifier: ai });
    }
    seen.add(ai);
    if (!identifier.attribute) {
      const sentence = `(${ai}) may not stand behind the "?" of a link.`;
      return failed('not_a_data_attribute', at, sentence, { identifier: ai });
    }
    if (orders.some((order) => order.includes(ai) && fits(inPath, identifier, order))) {
      const sentence = `(${ai}) belongs in the path of the link, not behind the "?".`;
      return failed('qualifier_in_query', at, sentence, { identifier: ai });
    }
  }
  return undefined;
}

/** Whether the identifier could stand among those of the path. */
function fits(path: readonly Identifier[], one: Identifier, order: readonly string[]): boolean {
  for (let index = 0; index <= path.length; index += 1) {
    if (inOrder([...path.slice(0, index), one, ...path.slice(index)], order)) return true;
  }
  return false;
}
