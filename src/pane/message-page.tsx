import './styles/tokens.css';
import './styles/base.css';
import './styles/parts.css';
import { render } from 'preact';

/** Puts a message in place of the pane: there is no workbook to show anything of. */
export function mountMessage(element: HTMLElement, title: string, message: string): void {
  render(
    <main class="empty">
      <h1 class="empty-title">{title}</h1>
      <p>{message}</p>
    </main>,
    element,
  );
}
