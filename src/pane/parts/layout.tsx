import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { IconButton } from './button.tsx';
import { classNames } from './class-names.ts';

export interface HeadingProps {
  readonly children: ComponentChildren;
  /** 2 for a section's or page's own, 3 below it. */
  readonly level?: 2 | 3;
  readonly id?: string;
  /** Gets the focus when something else than the tabs opens the section, or when what had it is gone. */
  readonly focusHome?: boolean;
  /** Can be given the focus. */
  readonly focusable?: boolean;
}

/** A heading; with focusHome it can take the focus. */
export function Heading({ children, level = 2, id, focusHome = false, focusable = focusHome }: HeadingProps) {
  const attributes = {
    ...(focusable ? { tabIndex: -1 } : {}),
    ...(focusHome ? { 'data-focus-home': '' } : {}),
  };
  return level === 2 ? (
    <h2 class="heading" id={id} {...attributes}>
      {children}
    </h2>
  ) : (
    <h3 class="subheading" id={id} {...attributes}>
      {children}
    </h3>
  );
}

export interface BannerProps {
  readonly tone: 'stop' | 'warn' | 'note';
  readonly title?: string;
  readonly children?: ComponentChildren;
  /** Buttons. */
  readonly actions?: ComponentChildren;
}

/** Something that stands above the rest until it is answered or no longer so. The tone is never all that tells. */
export function Banner({ tone, title, children, actions }: BannerProps) {
  return (
    <div class={classNames('banner', `banner-${tone}`)}>
      {title !== undefined && <p class="banner-title">{title}</p>}
      {children !== undefined && <div>{children}</div>}
      {actions !== undefined && <div class="actions">{actions}</div>}
    </div>
  );
}

export interface DisclosureProps {
  readonly summary: ComponentChildren;
  readonly children: ComponentChildren;
  readonly open?: boolean;
  readonly class?: string;
}

/** Something that opens and closes below its summary: the browser's own. */
export function Disclosure({ summary, children, open = false, class: name }: DisclosureProps) {
  return (
    <details class={classNames('disclosure', name)} open={open}>
      <summary>{summary}</summary>
      <div class="disclosure-body">{children}</div>
    </details>
  );
}

export interface DialogProps {
  readonly open: boolean;
  readonly title: string;
  readonly children: ComponentChildren;
  /** Escape, the cross, or one of the actions; the focus goes back to where it was. */
  readonly onClose: () => void;
  readonly actions?: ComponentChildren;
}

/** A question above everything else: the browser's own dialog. */
export function Dialog({ open, title, children, onClose, actions }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    if (open && !element.open) element.showModal();
    if (!open && element.open) element.close();
  }, [open]);
  return (
    <dialog class="dialog" ref={dialog} aria-label={title} onClose={onClose}>
      {open && (
        <>
          <div class="dialog-head">
            <h2 class="heading">{title}</h2>
            <IconButton label="Close" icon="close" onPress={onClose} />
          </div>
          <div class="dialog-body">{children}</div>
          {actions !== undefined && <div class="actions">{actions}</div>}
        </>
      )}
    </dialog>
  );
}
