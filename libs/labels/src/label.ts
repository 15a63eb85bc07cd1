import type { Carrier } from './gs1/scan.js';

export type Standard = 'GS1' | 'HIBC';

export const LABEL_FORMS = [
  'bracketed',
  'concatenated',
  'digital-link',
  'element-string',
  'gtin',
  'primary',
  'secondary',
  'symbols',
] as const;

export type LabelForm = (typeof LABEL_FORMS)[number];

export const LABEL_NOTES = ['day_not_stated', 'separator_replaced'] as const;

/**
 * day_not_stated: the expiry names a month; its last day is given. separator_replaced: the scanner
 * sent another sign for the separator, and there was one way to read it.
 */
export type LabelNote = (typeof LABEL_NOTES)[number];

export interface OtherElement {
  /** The application identifier, or the word for a part of a HIBC label. */
  readonly identifier: string;
  readonly title: string;
  readonly value: string;
}

/** What a label says. Whatever it does not say is null; nothing is made up. */
export interface Label {
  readonly standard: Standard;
  readonly form: LabelForm;
  readonly carrier: Carrier | null;
  /** GTIN of 14 digits, or company, product and unit of measure of HIBC. */
  readonly deviceIdentifier: string | null;
  readonly gtin14: string | null;
  /** The company code of HIBC; a GTIN does not say where its company prefix ends. */
  readonly labeler: string | null;
  readonly lot: string | null;
  readonly expiry: string | null;
  readonly expiryTime: string | null;
  readonly productionDate: string | null;
  readonly serial: string | null;
  readonly quantity: number | null;
  readonly others: readonly OtherElement[];
  /** The same for every way to write the same label; it is read back to the same label. */
  readonly canonical: string;
  readonly notes: readonly LabelNote[];
}
