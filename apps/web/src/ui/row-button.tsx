import { Button } from '@mantine/core';
import css from './row-button.module.css';

interface Props {
  /** Says also what it is about; begins with the word on the button. */
  readonly label: string;
  readonly onClick: () => void;
  readonly children: string;
}

/** What one can do with a row. */
export function RowButton({ label, onClick, children }: Props) {
  return (
    <Button
      variant="subtle"
      size="compact-md"
      className={`${css.rowAction ?? ''} tb-screen-only`}
      aria-label={label}
      onClick={onClick}
    >
      {children}
    </Button>
  );
}
