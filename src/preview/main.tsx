import { render } from 'preact';
import { openOffice } from './office/open-office.ts';
import { openDirect } from './page/open-direct.ts';
import { Page } from './page/page.tsx';
import type { PreviewWindow, StartSettings } from './page/preview-window.ts';
import { type WorkbookOpener, Workplace } from './page/workplace.ts';
import './preview.css';

async function fetched(path: string): Promise<Response> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path} is not served (${response.status}). Start the preview again.`);
  return response;
}

async function begin(element: HTMLElement): Promise<void> {
  const [start, bytes] = await Promise.all([
    fetched('start.json').then((response) => response.json() as Promise<StartSettings>),
    fetched('workbook').then((response) => response.arrayBuffer()),
  ]);
  const first = { name: start.fileName, bytes: new Uint8Array(bytes), day: start.sampleDay };
  const frame: { install: (window: Window) => void } = { install: () => undefined };
  const throughHost: WorkbookOpener = (file, bench, name) => {
    const opened = openOffice(file, bench, name, (made) => void workplace.saveNew(made));
    frame.install = opened.install;
    return opened;
  };
  const workplace: Workplace = new Workplace(first, start.office ? throughHost : openDirect);
  if (start.office) (window as Window & PreviewWindow).jarleafContainer = (each) => frame.install(each);
  (window as Window & PreviewWindow).jarleaf = workplace.port();
  element.textContent = '';
  render(<Page workplace={workplace} />, element);
}

const element = document.getElementById('preview');
if (element === null) throw new Error('The page has no element with the id preview.');
begin(element).catch((error: unknown) => {
  element.textContent = error instanceof Error ? error.message : String(error);
  throw error;
});
