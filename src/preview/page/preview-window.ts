import type { PreviewPort } from '../../workbook/preview-port.ts';

/** Where the pane's frame finds the port: on the page's own window. */
export interface PreviewWindow {
  jarleaf?: PreviewPort;
  /** Called by the pane's page, before the spreadsheet's own script loads there. */
  jarleafContainer?: (frame: Window) => void;
}

/** What the server says of how it was started. */
export interface StartSettings {
  /** The file that is shown first. */
  readonly fileName: string;
  /** Whether that is the sample studio, whose day is told. */
  readonly sampleDay: string | null;
  /** Whether the pane goes through the spreadsheet's own script. */
  readonly office: boolean;
}
