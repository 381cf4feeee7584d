/**
 * The file's name in an address of the web or of a disk, as the program gives it; null where the workbook was never
 * saved: then the program gives nothing, or a name such as Book1, which has no ending.
 */
export function fileNameIn(address: string): string | null {
  const onTheWeb = /^https?:/i.test(address) && URL.canParse(address);
  const path = onTheWeb ? new URL(address).pathname : address;
  const last = path.split(/[\\/]/).at(-1) ?? '';
  if (!last.includes('.')) return null;
  return onTheWeb ? withoutEscapes(last) : last;
}

function withoutEscapes(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch (error) {
    // A stray % is part of the name.
    if (error instanceof URIError) return text;
    throw error;
  }
}
