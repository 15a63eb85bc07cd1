import { useText } from '../../text/text-provider.js';
import css from './group-toggles.module.css';
import { GROUPS, type Group } from './groups.js';

interface Props {
  readonly groups: readonly Group[];
  readonly onToggle: (group: Group) => void;
}

/** By what to compare; several go together. */
export function GroupToggles({ groups, onToggle }: Props) {
  const t = useText();
  return (
    <fieldset className={`${css.row ?? ''} tb-screen-only`}>
      <legend className={css.label}>{t.costs.compareBy}</legend>
      {GROUPS.map((group) => (
        <button
          key={group}
          type="button"
          className={css.toggle}
          aria-pressed={groups.includes(group)}
          onClick={() => onToggle(group)}
        >
          {t.costs.groups[group]}
        </button>
      ))}
    </fieldset>
  );
}
