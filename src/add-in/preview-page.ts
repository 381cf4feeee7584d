import type { PreviewPort } from '../workbook/preview-port.ts';

/** The preview page that this page stands in as a frame; null in a spreadsheet program. */
export function previewPage(window: Window): PreviewPort | null {
  if (window.parent === window) return null;
  try {
    return (window.parent as Window & { readonly jarleaf?: PreviewPort }).jarleaf ?? null;
  } catch (error) {
    // A page of another origin may not be looked at: a spreadsheet program in a browser.
    if (error instanceof DOMException && error.name === 'SecurityError') return null;
    throw error;
  }
}
