import { answerOf, api, type Shape } from '../../api/client.js';
import type { Scanned } from './burst.js';

export type Reading = Shape<'LabelReadingDto'>;

/** A label in the words of the scanner, and what the service makes of it. */
export interface TextReading {
  readonly text: string;
  readonly reading: Reading;
}

/** One reading; or two, where scanner and computer are set to different keyboards and both could be. */
export type ScanReading = TextReading | { readonly either: readonly [TextReading, TextReading] };

const KEYBOARD = 'traybook.scanner-keyboard';

export type ScannerKeyboard = 'typed' | 'byPosition';

/** How the scanner of this device was last seen to write. */
export const scannerKeyboard = {
  get: (): ScannerKeyboard | undefined => {
    const kept = localStorage.getItem(KEYBOARD);
    return kept === 'typed' || kept === 'byPosition' ? kept : undefined;
  },
  set: (keyboard: ScannerKeyboard) => localStorage.setItem(KEYBOARD, keyboard),
};

async function read(text: string): Promise<TextReading> {
  return { text, reading: await answerOf(api.POST('/api/labels/read', { body: { text } })) };
}

/** Asks the service what a label says. Never guesses between two lots: it gives both. */
export async function readScan({ typed, byPosition }: Scanned): Promise<ScanReading> {
  if (typed === byPosition) return read(typed);
  const [asTyped, asPlaced] = await Promise.all([read(typed), read(byPosition)]);
  const [one, other] = [asTyped.reading.label, asPlaced.reading.label];
  if (one && other) {
    if (one.canonical === other.canonical) return asTyped;
    const known = scannerKeyboard.get();
    if (known) return known === 'typed' ? asTyped : asPlaced;
    return { either: [asTyped, asPlaced] };
  }
  if (!one && !other) return asTyped;
  // Check digits and the marks of symbols give away which of the two was meant.
  scannerKeyboard.set(one ? 'typed' : 'byPosition');
  return one ? asTyped : asPlaced;
}

/** A scan of the camera, which knows no keyboard. */
export const scannedText = (text: string): Scanned => ({ typed: text, byPosition: text });
