import {
  type CSSVariablesResolver,
  createTheme,
  defaultVariantColorsResolver,
  localStorageColorSchemeManager,
  type MantineColorsTuple,
  type VariantColorResolverResult,
} from '@mantine/core';

/** The one accent. Shade 8 carries text on light paper, shade 3 on dark. */
const petrol: MantineColorsTuple = [
  '#e9f4f5',
  '#d3e8ea',
  '#a9d3d7',
  '#80c3ca',
  '#55a7b0',
  '#338e98',
  '#1d7781',
  '#126771',
  '#0b5a63',
  '#06444b',
];

/** Warm greys, so that nothing on the paper looks blue. */
const gray: MantineColorsTuple = [
  '#faf7f1',
  '#f3eee5',
  '#e9e2d6',
  '#ddd5c7',
  '#c8bfb0',
  '#a89e8f',
  '#857c6f',
  '#645c51',
  '#474139',
  '#2b2722',
];

const dark: MantineColorsTuple = [
  '#ece6dc',
  '#cfc6b9',
  '#b3aa9d',
  '#8c8478',
  '#5d564d',
  '#453f38',
  '#332e29',
  '#262220',
  '#1e1b18',
  '#171412',
];

const quiet = {
  color: 'var(--tb-accent)',
  hoverColor: 'var(--tb-accent)',
  hover: 'var(--tb-hover)',
};
const VARIANTS: Readonly<Record<string, Partial<VariantColorResolverResult>>> = {
  filled: { color: 'var(--tb-on-accent)' },
  light: { ...quiet, background: 'var(--tb-accent-soft)' },
  subtle: quiet,
};

export const theme = createTheme({
  colors: { petrol, gray, dark },
  primaryColor: 'petrol',
  primaryShade: { light: 8, dark: 3 },
  // Text on the accent is light on paper and dark at night; Mantine would decide once for both.
  variantColorResolver: (input) => {
    const colors = defaultVariantColorsResolver(input);
    const own = VARIANTS[input.variant];
    return own === undefined ? colors : { ...colors, ...own };
  },
  white: '#fdfbf7',
  black: '#23201c',
  fontFamily: 'var(--tb-font)',
  fontFamilyMonospace: 'ui-monospace, "SF Mono", "Cascadia Mono", Consolas, monospace',
  headings: { fontFamily: 'var(--tb-font)', fontWeight: '620' },
  defaultRadius: 4,
  respectReducedMotion: true,
  focusRing: 'auto',
  cursorType: 'pointer',
  components: {
    Button: { defaultProps: { size: 'md' } },
    TextInput: { defaultProps: { size: 'md' } },
    PasswordInput: { defaultProps: { size: 'md' } },
    NativeSelect: { defaultProps: { size: 'md' } },
    Select: { defaultProps: { size: 'md' } },
    Textarea: { defaultProps: { size: 'md' } },
    Checkbox: { defaultProps: { size: 'md' } },
  },
});

/** Mantine's own names for colours, bound to ours (tokens.css). */
export const cssVariables: CSSVariablesResolver = () => {
  const bound = {
    '--mantine-color-body': 'var(--tb-ground)',
    '--mantine-color-text': 'var(--tb-ink)',
    '--mantine-color-dimmed': 'var(--tb-quiet)',
    '--mantine-color-placeholder': 'var(--tb-quiet)',
    '--mantine-color-error': 'var(--tb-danger)',
    '--mantine-color-anchor': 'var(--tb-accent)',
    '--mantine-color-default': 'var(--tb-field)',
    '--mantine-color-default-hover': 'var(--tb-hover)',
    '--mantine-color-default-color': 'var(--tb-ink)',
    '--mantine-color-default-border': 'var(--tb-edge)',
  };
  return { variables: {}, light: bound, dark: bound };
};

export const themeMemory = localStorageColorSchemeManager({ key: 'traybook.theme' });
