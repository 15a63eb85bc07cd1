import { SEPARATOR } from './element-string.js';
import type { Element } from './values.js';

/** The element string of a symbol: a separator behind what has no predefined length, unless last. */
export function writeElementString(elements: readonly Element[]): string {
  let text = '';
  elements.forEach(({ identifier, value }, index) => {
    const more = index < elements.length - 1;
    text += identifier.ai + value + (more && !identifier.predefined ? SEPARATOR : '');
  });
  return text;
}

export function writeBracketed(elements: readonly Element[]): string {
  return elements
    .map(({ identifier, value }) => `(${identifier.ai})${value.replaceAll('(', '\\(')}`)
    .join('');
}

interface PrintOptions {
  /** Print what the identifier means in front of it. */
  readonly titles?: boolean;
}

/** The lines that are printed beside a symbol. */
export function printedLines(
  elements: readonly Element[],
  options: PrintOptions = {},
): readonly string[] {
  return elements.map(({ identifier, value }) => {
    const line = `(${identifier.ai}) ${value}`;
    return options.titles ? `${identifier.title} ${line}` : line;
  });
}
