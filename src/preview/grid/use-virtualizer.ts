import {
  elementScroll,
  observeElementOffset,
  observeElementRect,
  Virtualizer,
  type VirtualizerOptions,
} from '@tanstack/virtual-core';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

type Options = Pick<
  VirtualizerOptions<HTMLElement, HTMLElement>,
  | 'count'
  | 'getScrollElement'
  | 'estimateSize'
  | 'horizontal'
  | 'overscan'
  | 'paddingStart'
  | 'scrollPaddingStart'
  | 'rangeExtractor'
>;

/** The rows, or columns, of a scrolled element that are in view: only those are drawn. */
export function useVirtualizer(options: Options): Virtualizer<HTMLElement, HTMLElement> {
  const [, draw] = useState(0);
  const known = useRef<Virtualizer<HTMLElement, HTMLElement> | null>(null);
  const all = {
    ...options,
    observeElementRect,
    observeElementOffset,
    scrollToFn: elementScroll,
    onChange: () => draw((count) => count + 1),
  };
  known.current ??= new Virtualizer(all);
  const virtualizer = known.current;
  virtualizer.setOptions(all);
  // The library's own names for what whoever draws with it has to call.
  // oxlint-disable-next-line no-underscore-dangle
  useLayoutEffect(() => virtualizer._didMount(), []);
  // oxlint-disable-next-line no-underscore-dangle
  useLayoutEffect(() => virtualizer._willUpdate());
  return virtualizer;
}
