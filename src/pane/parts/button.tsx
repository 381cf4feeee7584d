import type { ComponentChildren, Ref } from 'preact';
import { classNames } from './class-names.ts';

export interface ButtonProps {
  readonly children: ComponentChildren;
  /** Not called while unavailable. A submit button needs none: the form's onSubmit does it. */
  readonly onPress?: () => unknown;
  /** main: the one thing to do here, 44 px high. plain and quiet: 36 px. link: an action that reads as text. */
  readonly look?: 'main' | 'plain' | 'quiet' | 'link';
  readonly type?: 'button' | 'submit';
  /** Can be focused and is announced as unavailable, but does nothing: so the focus isn't lost while busy. */
  readonly unavailable?: boolean;
  /** What is read out where the text alone doesn't say it; begins with the text that is shown. */
  readonly label?: string;
  readonly expanded?: boolean;
  readonly class?: string;
  readonly buttonRef?: Ref<HTMLButtonElement>;
  /** Gets the focus when something else than the tabs opens the section, or when what had it is gone. */
  readonly focusHome?: boolean;
}

/** A button with words on it. */
export function Button(props: ButtonProps) {
  const { children, onPress, look = 'plain', type = 'button', unavailable = false } = props;
  return (
    <button
      type={type}
      class={classNames('button', `button-${look}`, props.class)}
      aria-label={props.label}
      aria-expanded={props.expanded}
      aria-disabled={unavailable ? true : undefined}
      data-focus-home={props.focusHome === true ? '' : undefined}
      ref={props.buttonRef ?? null}
      onClick={(event) => {
        if (unavailable) event.preventDefault();
        else onPress?.();
      }}
    >
      {children}
    </button>
  );
}

export interface IconButtonProps {
  /** What it does, for those who can't see the icon; shown as a tip too. */
  readonly label: string;
  readonly icon: IconName;
  readonly onPress: () => unknown;
  readonly class?: string;
}

const ICONS = {
  close: 'M4 4l8 8M12 4l-8 8',
  back: 'M10 3L5 8l5 5',
  less: 'M3 8h10',
  more: 'M3 8h10M8 3v10',
} as const;

export type IconName = keyof typeof ICONS;

/** A line drawing of 16 × 16 px in the colour of the text; never the only thing that says something. */
export function Icon({ icon }: { readonly icon: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
      <path d={ICONS[icon]} />
    </svg>
  );
}

/** A square button of 36 px with an icon only. */
export function IconButton({ label, icon, onPress, class: name }: IconButtonProps) {
  return (
    <button
      type="button"
      class={classNames('button button-icon', name)}
      aria-label={label}
      title={label}
      onClick={onPress}
    >
      <Icon icon={icon} />
    </button>
  );
}
