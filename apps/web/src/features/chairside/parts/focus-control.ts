/** Leads to a control by its name, once it is on the page. */
export function focusControl(control: string): void {
  window.requestAnimationFrame(() => {
    const place = document.getElementById(`control-${control}`);
    const inside = place?.matches('input, select, button')
      ? place
      : place?.querySelector<HTMLElement | SVGElement>(
          'input:checked, input, select, button, [tabindex="0"]',
        );
    if (!inside) return;
    inside.focus({ preventScroll: true });
    place?.scrollIntoView({ block: 'nearest' });
  });
}
