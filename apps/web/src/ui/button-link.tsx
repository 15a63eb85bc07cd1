import { Button, type ButtonProps } from '@mantine/core';
import { createLink } from '@tanstack/react-router';
import type { AnchorHTMLAttributes } from 'react';

type Props = ButtonProps & Omit<AnchorHTMLAttributes<HTMLAnchorElement>, keyof ButtonProps>;

function ButtonAnchor(props: Props) {
  return <Button component="a" {...props} />;
}

/** A link that looks like a button: `<ButtonLink to="/today" variant="default">…`. */
export const ButtonLink = createLink(ButtonAnchor);
