import { Button } from '@mantine/core';
import { createLink } from '@tanstack/react-router';

/** A link that looks like a button: `<ButtonLink to="/today" variant="default">…`. */
export const ButtonLink = createLink(Button<'a'>);
