/** Where the client library of the spreadsheet program comes from: its licence and its documentation ask for that. */
const OFFICE_ORIGIN = 'https://appsforoffice.microsoft.com';

/**
 * What the pane may load and whom it may ask: itself and the client library's origin, nobody else. Tried with the
 * real library in a browser: as in a desktop program it loads further scripts of its origin (the program's own
 * client, its texts); as in a web program also a frame of its origin, by which it tells whether the page around it
 * may be trusted. It needs no inline script, no inline style and no eval. What this keeps it from is its frame for
 * telemetry, and the inline styles of elements that it doesn't show.
 * Who may frame the page can't be said in a page, only by the server's headers.
 * The solver that works out what to buy is WebAssembly. It runs in a worker, to which a policy that stands in the page
 * doesn't reach: so the page itself needs no word that allows compiling it, as tried in a browser.
 */
export const CONTENT_SECURITY_POLICY = Object.entries({
  'default-src': ["'none'"],
  'script-src': ["'self'", OFFICE_ORIGIN],
  'style-src': ["'self'"],
  'img-src': ["'self'"],
  'connect-src': ["'self'"],
  'frame-src': [OFFICE_ORIGIN],
  'worker-src': ["'self'"],
  'base-uri': ["'none'"],
  'form-action': ["'none'"],
})
  .map(([directive, sources]) => [directive, ...sources].join(' '))
  .join('; ');
