import { VisuallyHidden } from '@mantine/core';
import { createLink } from '@tanstack/react-router';
import type { AnchorHTMLAttributes, ReactNode } from 'react';
import { useText } from '../../../text/text-provider.js';
import css from './parts.module.css';

export function Chips({ children }: { readonly children: ReactNode }) {
  return <div className={`${css.chips ?? ''} tb-screen-only`}>{children}</div>;
}

interface Props extends Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'children'> {
  readonly children: string;
}

function Anchor({ children, href, ...rest }: Props) {
  const t = useText();
  return (
    <a {...rest} className={css.chip} href={href}>
      {children}
      <VisuallyHidden>, {t.shelves.filter.remove}</VisuallyHidden>
      <svg viewBox="0 0 10 10" aria-hidden="true">
        <path d="M1 1l8 8M9 1l-8 8" />
      </svg>
    </a>
  );
}

/** A filter that is not in the row of filters; following it takes it away. */
export const Chip = createLink(Anchor);
