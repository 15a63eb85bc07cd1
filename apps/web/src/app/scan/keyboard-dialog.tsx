import { Button } from '@mantine/core';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import type { ScannerKeyboard, TextReading } from './read-scan.js';
import css from './scan.module.css';

interface Props {
  readonly either: readonly [TextReading, TextReading];
  readonly onClose: () => void;
  readonly onChoose: (keyboard: ScannerKeyboard, one: TextReading) => void;
}

const KEYBOARDS = ['typed', 'byPosition'] as const;

/** Asks for what the label says, never for what a keyboard is called; remembered on this device. */
export default function KeyboardDialog({ either, onClose, onChoose }: Props) {
  const { keyboard } = useText().scan;
  return (
    <Dialog title={keyboard.title} opened onClose={onClose}>
      <p>{keyboard.lead}</p>
      <div className={css.choices}>
        {either.map((one, i) => (
          <Button
            key={KEYBOARDS[i]}
            variant="default"
            onClick={() => onChoose(KEYBOARDS[i] ?? 'typed', one)}
          >
            {wordsOf(one) ?? keyboard.noLot}
          </Button>
        ))}
      </div>
    </Dialog>
  );
}

function wordsOf({ reading: { label } }: TextReading): string | undefined {
  const parts = [label?.lot, label?.serial].filter((part) => typeof part === 'string');
  return parts.length === 0 ? label?.canonical : parts.join(', ');
}
