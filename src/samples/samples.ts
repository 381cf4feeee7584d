import { damagedWorkbook } from './damaged.ts';
import { demoWorkbook } from './demo-studio.ts';
import { starterWorkbook } from './starter.ts';

/** The sample workbooks by file name; each is made anew, with the same bytes every time. */
export const SAMPLES = {
  'starter.xlsx': starterWorkbook,
  'demo-studio.xlsx': demoWorkbook,
  'damaged.xlsx': damagedWorkbook,
} as const satisfies Readonly<Record<string, () => Uint8Array>>;
