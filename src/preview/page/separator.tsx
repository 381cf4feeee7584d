import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';

export const NARROWEST_PANE = 320;
export const WIDEST_PANE = 500;
const STEP = 10;
/** What a click without a drag goes through. */
const STOPS = [NARROWEST_PANE, 400, WIDEST_PANE];

/** The bar between workbook and pane: arrow keys, a drag, or a click make the pane wider or narrower. */
export function Separator({ width }: { readonly width: Signal<number> }): JSX.Element {
  const dragged = useRef(false);
  const set = (to: number): void => {
    width.value = Math.min(Math.max(Math.round(to), NARROWEST_PANE), WIDEST_PANE);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const to = keyWidth(event.key, width.value);
    if (to === null) return;
    event.preventDefault();
    set(to);
  };
  return (
    <div
      class="separator"
      role="separator"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label="Width of the pane"
      aria-valuenow={width.value}
      aria-valuemin={NARROWEST_PANE}
      aria-valuemax={WIDEST_PANE}
      aria-valuetext={`${width.value} pixels`}
      title="Drag, press the arrow keys, or click"
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        dragged.current = false;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        if (Math.abs(event.movementX) > 0) dragged.current = true;
        if (dragged.current) set(window.innerWidth - event.clientX - event.currentTarget.offsetWidth / 2);
      }}
      onClick={() => {
        if (!dragged.current) set(STOPS.find((stop) => stop > width.value) ?? NARROWEST_PANE);
      }}
    />
  );
}

function keyWidth(key: string, width: number): number | null {
  switch (key) {
    case 'ArrowLeft':
      return width + STEP;
    case 'ArrowRight':
      return width - STEP;
    case 'Home':
      return NARROWEST_PANE;
    case 'End':
      return WIDEST_PANE;
    default:
      return null;
  }
}
