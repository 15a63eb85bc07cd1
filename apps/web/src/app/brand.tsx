import css from './brand.module.css';

/** A page with a turned corner, standing on a tray. */
function Mark() {
  return (
    <svg className={css.mark} viewBox="0 0 32 32" aria-hidden="true">
      <path className={css.page} d="M8.5 20V4.5h10l5 5V20" />
      <path className={css.page} d="M18.5 4.5v5h5" />
      <path className={css.page} d="M12.5 14.5h7" />
      <path className={css.tray} d="M2.5 22.5c0 3.5 1.5 5 5 5h17c3.5 0 5-1.5 5-5" />
    </svg>
  );
}

export function Brand() {
  return (
    <span className={css.brand}>
      <Mark />
      <span>Traybook</span>
    </span>
  );
}
