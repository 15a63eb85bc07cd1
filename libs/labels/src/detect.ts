import { type Carrier, symbologyOf } from './gs1/scan.js';

export type Issuer = 'GS1' | 'HIBCC' | 'ICCBBA';

export interface Detected {
  /** Whose standard the data follow, as far as the first characters say; null if they do not. */
  readonly issuer: Issuer | null;
  readonly carrier: Carrier | null;
  readonly payload: string;
}

/** Says what kind of label a text is without checking what it holds. */
export function detectLabel(text: string): Detected {
  const symbology = symbologyOf(text, { anyCarrier: true });
  const payload = symbology ? text.slice(3) : text;
  const isGs1 = symbology !== undefined && symbology.holds !== 'plain';
  return {
    issuer: isGs1 ? 'GS1' : issuerOf(payload),
    carrier: symbology?.carrier ?? null,
    payload,
  };
}

function issuerOf(payload: string): Issuer | null {
  if (/^\*?\+/.test(payload)) return 'HIBCC';
  if (/^[=&]/.test(payload)) return 'ICCBBA';
  return /^(\(|\d{2}|https?:\/\/)/i.test(payload) ? 'GS1' : null;
}
