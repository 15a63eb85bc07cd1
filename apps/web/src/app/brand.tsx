import css from './brand.module.css';

/** A page with a turned corner, standing on a tray. */
export function Mark() {
  return (
    <svg className={css.mark} viewBox="0 0 32 32" aria-hidden="true">
      <path className={css.page} d="M8.500 20V4.500h10l5 5V20" />
      <path className={css.page} d="M18.500 4.500v5h5" />
      <path className={css.page} d="M12.500 14.500h7" />
      <path className={css.tray} d="M2.500 22.500c0 3.500 1.500 5 5 5h17c3.500 0 5-1.500 5-5" />
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
