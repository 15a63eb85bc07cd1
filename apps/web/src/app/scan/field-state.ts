type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/** A field as it was before the scanner typed into it. */
export interface FieldState {
  readonly field: Field;
  readonly value: string;
  readonly selection: readonly [number, number] | undefined;
}

export function focusedField(): FieldState | undefined {
  const field = document.activeElement;
  const isField =
    field instanceof HTMLInputElement ||
    field instanceof HTMLTextAreaElement ||
    field instanceof HTMLSelectElement;
  if (!isField || !takesKeys(field)) return undefined;
  return { field, value: field.value, selection: selectionOf(field) };
}

const NO_TEXT = new Set(['button', 'checkbox', 'radio', 'submit', 'reset', 'file', 'image']);

function takesKeys(field: Field): boolean {
  return !(field instanceof HTMLInputElement && NO_TEXT.has(field.type));
}

function selectionOf(field: Field): readonly [number, number] | undefined {
  if (field instanceof HTMLSelectElement) return undefined;
  const { selectionStart, selectionEnd } = field; // null where a kind of field has none
  return selectionStart === null || selectionEnd === null
    ? undefined
    : [selectionStart, selectionEnd];
}

/** Takes the scan out of the field again, so that React sees it too. */
export function restore({ field, value, selection }: FieldState): void {
  if (!field.isConnected) return;
  // A day that is half typed counts as none: only another value makes the browser forget it.
  if (field instanceof HTMLInputElement && field.type === 'date') write(field, '2000-01-01');
  write(field, value);
  field.dispatchEvent(new Event('input', { bubbles: true }));
  if (field instanceof HTMLSelectElement) {
    field.dispatchEvent(new Event('change', { bubbles: true }));
    return;
  }
  if (selection) field.setSelectionRange(...selection);
  // A list that the first letters opened would cover what the scan fills in.
  if (field.getAttribute('aria-haspopup') === 'listbox') field.blur();
}

/** Past React's own setter, which would hide the change from it. */
function write(field: Field, value: string): void {
  Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')?.set?.call(field, value);
}
