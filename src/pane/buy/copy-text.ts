/**
 * Copies the text of a field. In a pane the browser may forbid it, and then the text is left selected, to be copied by
 * the keys that copy everywhere.
 * @returns whether it was copied
 */
export async function copyText(field: HTMLTextAreaElement): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(field.value);
    return true;
  } catch {
    // Forbidden, or not there at all: what is said then is how to copy it by hand.
    field.focus();
    field.select();
    return false;
  }
}
