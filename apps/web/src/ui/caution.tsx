import { useText } from '../text/text-provider.js';
import css from './caution.module.css';

/** Stands below whatever could mislead. */
export function Caution() {
  const t = useText();
  return <p className={css.caution}>{t.app.caution}</p>;
}
