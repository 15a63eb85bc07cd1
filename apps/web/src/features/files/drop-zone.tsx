import { Button } from '@mantine/core';
import { type DragEvent, useRef, useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import css from './files.module.css';

const MOST_BYTES = 10 * 1_048_576;

interface Props {
  readonly file: File | undefined;
  readonly onFile: (file: File) => void;
}

/** A place to drop a file on, and a button for those who do not drag. */
export function DropZone({ file, onFile }: Props) {
  const w = useText().files.bring;
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const take = (given: File | null | undefined) => {
    if (!given) return;
    if (given.size > MOST_BYTES) notify({ tone: 'problem', text: w.tooLarge });
    else onFile(given);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    take(event.dataTransfer.files.item(0));
  };
  return (
    // Dropping is a second way to what the button does.
    // biome-ignore lint/a11y/noStaticElementInteractions: the button does the same by keyboard
    <div
      className={css.drop}
      data-over={over || undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <input
        ref={input}
        type="file"
        accept=".csv,.xlsx,.txt"
        hidden
        onChange={(event) => {
          take(event.currentTarget.files?.item(0));
          event.currentTarget.value = ''; // the same file again, once it was mended
        }}
      />
      <p className={css.name}>{file ? file.name : w.drop}</p>
      <Button variant={file ? 'default' : 'filled'} onClick={() => input.current?.click()}>
        {file ? w.other : w.choose}
      </Button>
      <p className={css.hint}>{w.forms}</p>
    </div>
  );
}
