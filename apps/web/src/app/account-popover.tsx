import { Popover } from '@mantine/core';
import { useText } from '../text/text-provider.js';
import { AccountPanel } from './account-panel.js';
import css from './account-panel.module.css';
import { useSession } from './session.js';

function initialsOf(name: string): string {
  const words = name.split(/\s+/).filter((word) => /^\p{L}/u.test(word) && !word.endsWith('.'));
  const [first = name, last] = [words[0], words.length > 1 ? words.at(-1) : undefined];
  return `${first.slice(0, 1)}${last?.slice(0, 1) ?? ''}`.toUpperCase();
}

/** The account on narrow screens: behind a button. */
export function AccountPopover() {
  const t = useText();
  const { person } = useSession();
  const initials = initialsOf(person.displayName);
  return (
    <Popover position="bottom-end" width={280} trapFocus returnFocus shadow="md">
      <Popover.Target>
        <button
          type="button"
          className={css.initials}
          aria-label={`${initials}: ${t.account.open}`}
        >
          {initials}
        </button>
      </Popover.Target>
      <Popover.Dropdown aria-label={t.account.open}>
        <AccountPanel />
      </Popover.Dropdown>
    </Popover>
  );
}
