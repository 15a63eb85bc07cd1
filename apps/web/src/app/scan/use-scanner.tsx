import { Button } from '@mantine/core';
import { lazy, type ReactNode, Suspense, useEffect, useRef, useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { useReport } from '../../ui/use-report.js';
import { useMay } from '../session.js';
import { listenForScans } from './listen.js';
import {
  readScan,
  type ScannerKeyboard,
  scannedText,
  scannerKeyboard,
  type TextReading,
} from './read-scan.js';
import { type Said, ScanNote } from './scan-note.js';
import { type Match, possibleMatches, type ScannedThing, thingOf, thingOfOwn } from './thing.js';

const CameraDialog = lazy(() => import('./camera-dialog.js'));
const WhichDialog = lazy(() => import('./which-dialog.js'));
const KeyboardDialog = lazy(() => import('./keyboard-dialog.js'));

export interface ScannerOptions {
  /** Does with it what the screen is for; the sentence it answers with is shown. */
  readonly onThing: (thing: ScannedThing) => Promise<string | undefined> | string | undefined;
  /** For screens that look for plain numbers: what is no label at all. */
  readonly onPlain?: (text: string) => void;
  /** An unknown product is asked about (the default), or handed on with what its label says. */
  readonly unknown?: 'ask' | 'pass';
}

type Asking =
  | { readonly what: 'camera' }
  | { readonly what: 'which'; readonly of: TextReading; readonly matches: readonly Match[] }
  | { readonly what: 'keyboard'; readonly either: readonly [TextReading, TextReading] };

export interface Scanner {
  /** Opens the camera. */
  readonly button: ReactNode;
  /** What was read last, or what is wrong with it; belongs above what it changes. */
  readonly note: ReactNode;
}

/**
 * Makes a screen take scans for as long as it is shown: of a hand scanner, wherever the focus is, and
 * of the camera. One screen at a time: the one that came last.
 */
export function useScanner(options: ScannerOptions): Scanner {
  const t = useText();
  const [asking, setAsking] = useState<Asking>();
  const [said, setSaid] = useState<Said>();
  const { take, start } = useTaking(options, setAsking, setSaid);
  const close = () => setAsking(undefined);
  const chosen = (keyboard: ScannerKeyboard, one: TextReading) => {
    scannerKeyboard.set(keyboard);
    close();
    take(one);
  };
  const dialogs = asking && (
    <Suspense fallback={null}>
      {asking.what === 'camera' && (
        <CameraDialog
          onClose={close}
          onText={(text) => {
            close();
            start(scannedText(text));
          }}
        />
      )}
      {asking.what === 'which' && (
        <WhichDialog
          reading={asking.of.reading}
          matches={asking.matches}
          onClose={close}
          onMatch={(match) => {
            close();
            take(asking.of, match);
          }}
          onRemembered={() => {
            close();
            start(scannedText(asking.of.text));
          }}
        />
      )}
      {asking.what === 'keyboard' && (
        <KeyboardDialog either={asking.either} onClose={close} onChoose={chosen} />
      )}
    </Suspense>
  );
  return {
    button: (
      <Button variant="default" onClick={() => setAsking({ what: 'camera' })}>
        {t.scan.camera}
      </Button>
    ),
    note: (
      <>
        <ScanNote said={said} />
        {dialogs}
      </>
    ),
  };
}

type Start = Parameters<Parameters<typeof listenForScans>[0]>[0];

/** From what the scanner sent to what the screen does with it. */
function useTaking(
  options: ScannerOptions,
  ask: (asking: Asking) => void,
  say: (said: Said | undefined) => void,
) {
  const { onThing, onPlain, unknown = 'ask' } = options;
  const t = useText();
  const may = useMay();
  const report = useReport();
  const hand = (thing: ScannedThing, text: string) => {
    const outcome = async () => say({ thing, text, outcome: await onThing(thing) });
    outcome().catch(report);
  };
  const take = (of: TextReading, match?: Match) => {
    const { text, reading } = of;
    const { label, problem, own } = reading;
    if (problem || !label) {
      if (onPlain && isPlain(text, problem)) return onPlain(text.trim());
      return say({ text, problem });
    }
    if (own) return hand(thingOfOwn(own), text);
    if (match) return hand(thingOf(reading, match), text);
    const matches = possibleMatches(reading);
    const [only] = matches;
    if (only && matches.length === 1) return hand(thingOf(reading, only), text);
    const code = label.deviceIdentifier;
    if (code === null && label.lot === null) {
      const wrong = label.others.some(({ identifier }) => identifier === '91');
      return say({ text, sentence: wrong ? t.scan.foreign : t.scan.nothingToGo });
    }
    if (code === null || (unknown === 'pass' && !only)) return hand(thingOf(reading, only), text);
    if (!only && !may('catalogue.write')) {
      return say({ text, sentence: `${t.scan.unknown(code)} ${t.scan.unknownAsk}` });
    }
    say(only ? undefined : { text, sentence: t.scan.unknown(code) });
    ask({ what: 'which', of, matches });
  };
  const start = (scanned: Start) => {
    const look = async () => {
      const read = await readScan(scanned);
      if ('either' in read) ask({ what: 'keyboard', either: read.either });
      else take(read);
    };
    look().catch(report);
  };
  const latest = useRef(start);
  useEffect(() => {
    latest.current = start;
  });
  useEffect(() => listenForScans((scanned) => latest.current(scanned)), []);
  return { take, start };
}

/** What a bare number is taken for; a label with a wrong check digit is none. */
const NO_LABEL = new Set(['not_a_label', 'unknown_ai', 'too_short']);

/** Neither a label nor a piece of one: a lot number or a chart reference in a symbol of its own. */
function isPlain(text: string, problem: TextReading['reading']['problem']): boolean {
  const number = text.trim();
  const marked = /^[\](+*]|^https?:/.test(number);
  return number.length <= 60 && !marked && problem !== null && NO_LABEL.has(problem.code);
}
