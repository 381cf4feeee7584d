import { type Theme, webDarkTheme, webLightTheme } from '@fluentui/tokens';

/** A custom property's value in light and in dark surroundings. */
export type TwoThemes = { readonly light: string; readonly dark: string };

/**
 * The custom properties of the pane and where their values come from: the name without its dashes, and the key in
 * the themes of @fluentui/tokens. A property that the pane doesn't use has no place here.
 */
const FROM_THEME = {
  'colour-text': 'colorNeutralForeground1',
  'colour-text-2': 'colorNeutralForeground2',
  'colour-text-3': 'colorNeutralForeground3',
  'colour-text-4': 'colorNeutralForeground4',
  'colour-text-disabled': 'colorNeutralForegroundDisabled',
  'colour-surface': 'colorNeutralBackground1',
  'colour-surface-hover': 'colorNeutralBackground1Hover',
  'colour-surface-pressed': 'colorNeutralBackground1Pressed',
  'colour-surface-selected': 'colorNeutralBackground1Selected',
  'colour-surface-2': 'colorNeutralBackground2',
  'colour-surface-3': 'colorNeutralBackground3',
  'colour-surface-disabled': 'colorNeutralBackgroundDisabled',
  'colour-subtle-hover': 'colorSubtleBackgroundHover',
  'colour-subtle-pressed': 'colorSubtleBackgroundPressed',
  'colour-subtle-selected': 'colorSubtleBackgroundSelected',
  'colour-stroke': 'colorNeutralStroke1',
  'colour-stroke-2': 'colorNeutralStroke2',
  'colour-stroke-accessible': 'colorNeutralStrokeAccessible',
  'colour-stroke-accessible-hover': 'colorNeutralStrokeAccessibleHover',
  'colour-stroke-disabled': 'colorNeutralStrokeDisabled',
  'colour-focus-inner': 'colorStrokeFocus1',
  'colour-focus-outer': 'colorStrokeFocus2',
  'colour-danger-text': 'colorStatusDangerForeground3',
  'colour-danger-surface': 'colorStatusDangerBackground1',
  'colour-danger-stroke': 'colorStatusDangerBorder1',
  'colour-danger-mark': 'colorStatusDangerBorder2',
  'colour-warning-text': 'colorStatusWarningForeground1',
  'colour-warning-surface': 'colorStatusWarningBackground1',
  'colour-warning-stroke': 'colorStatusWarningBorder1',
  'colour-warning-mark': 'colorStatusWarningBorder2',
  'colour-success-text': 'colorStatusSuccessForeground3',
  'colour-success-surface': 'colorStatusSuccessBackground1',
  'colour-success-stroke': 'colorStatusSuccessBorder1',
  'colour-success-mark': 'colorStatusSuccessBorder2',
  'shadow-4': 'shadow4',
  'shadow-8': 'shadow8',
  'space-xxs': 'spacingHorizontalXXS',
  'space-xs': 'spacingHorizontalXS',
  'space-s': 'spacingHorizontalS',
  'space-m': 'spacingHorizontalM',
  'space-l': 'spacingHorizontalL',
  'space-xl': 'spacingHorizontalXL',
  'space-xxl': 'spacingHorizontalXXL',
  'space-xxxl': 'spacingHorizontalXXXL',
  'radius-s': 'borderRadiusSmall',
  'radius-m': 'borderRadiusMedium',
  'radius-l': 'borderRadiusLarge',
  'radius-xl': 'borderRadiusXLarge',
  'radius-round': 'borderRadiusCircular',
  'stroke-thin': 'strokeWidthThin',
  'stroke-thick': 'strokeWidthThick',
  'stroke-thicker': 'strokeWidthThicker',
  'font-family-code': 'fontFamilyMonospace',
  'font-size-s': 'fontSizeBase200',
  'font-size-m': 'fontSizeBase300',
  'font-size-l': 'fontSizeBase400',
  'font-size-xl': 'fontSizeBase500',
  'font-size-xxl': 'fontSizeBase600',
  'line-height-s': 'lineHeightBase200',
  'line-height-m': 'lineHeightBase300',
  'line-height-l': 'lineHeightBase400',
  'line-height-xl': 'lineHeightBase500',
  'line-height-xxl': 'lineHeightBase600',
  'font-weight-regular': 'fontWeightRegular',
  'font-weight-semibold': 'fontWeightSemibold',
  'font-weight-bold': 'fontWeightBold',
} as const satisfies Readonly<Record<string, keyof Theme>>;

/** Fonts of the device; the themes also name one that is fetched from elsewhere, which a pane without network can't. */
const FONT_FAMILY = "'Segoe UI', -apple-system, BlinkMacSystemFont, Roboto, 'Helvetica Neue', sans-serif";

/** The accent is the product's own, a quiet green-grey, in place of the themes' brand colour. */
const OWN: Readonly<Record<string, TwoThemes>> = {
  'colour-accent': { light: '#2f5f58', dark: '#8fc7bd' },
  'colour-accent-hover': { light: '#264f49', dark: '#a5d5cc' },
  'colour-accent-pressed': { light: '#1c3d38', dark: '#7ab3a9' },
  'colour-on-accent': { light: '#ffffff', dark: '#10211e' },
  'colour-accent-surface': { light: '#e8f0ee', dark: '#1d322f' },
  'colour-accent-stroke': { light: '#a9c4be', dark: '#3f6b64' },
  'font-family': { light: FONT_FAMILY, dark: FONT_FAMILY },
};

/** Every custom property of the pane by its name, without dashes, in the order in which they are written. */
export const DESIGN_TOKENS: ReadonlyMap<string, TwoThemes> = new Map([
  ...Object.entries(OWN),
  ...Object.entries(FROM_THEME).map(([name, key]): [string, TwoThemes] => [
    name,
    { light: String(webLightTheme[key]), dark: String(webDarkTheme[key]) },
  ]),
]);
