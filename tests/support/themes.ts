/** The theme variables that the editor sets on a webview, for its four kinds of theme (its own default themes, *from memory*). */

export type ThemeName = 'light' | 'dark' | 'high-contrast' | 'high-contrast-light';

interface Theme {
  readonly kind: string;
  readonly variables: Readonly<Record<string, string>>;
}

const fonts = {
  '--vscode-font-family': 'system-ui, "Noto Sans", sans-serif',
  '--vscode-font-size': '13px',
};

export const themes: Readonly<Record<ThemeName, Theme>> = {
  light: {
    kind: 'vscode-light',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#ffffff',
      '--vscode-editor-foreground': '#3b3b3b',
      '--vscode-focusBorder': '#005fb8',
      '--vscode-editorWidget-background': '#f8f8f8',
      '--vscode-editorWidget-foreground': '#3b3b3b',
      '--vscode-widget-border': '#e5e5e5',
      '--vscode-editorHoverWidget-background': '#f8f8f8',
      '--vscode-editorHoverWidget-foreground': '#3b3b3b',
      '--vscode-editorHoverWidget-border': '#c8c8c8',
    },
  },
  dark: {
    kind: 'vscode-dark',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#1f1f1f',
      '--vscode-editor-foreground': '#cccccc',
      '--vscode-focusBorder': '#0078d4',
      '--vscode-editorWidget-background': '#202020',
      '--vscode-editorWidget-foreground': '#cccccc',
      '--vscode-widget-border': '#313131',
      '--vscode-editorHoverWidget-background': '#202020',
      '--vscode-editorHoverWidget-foreground': '#cccccc',
      '--vscode-editorHoverWidget-border': '#454545',
    },
  },
  'high-contrast': {
    kind: 'vscode-high-contrast',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#000000',
      '--vscode-editor-foreground': '#ffffff',
      '--vscode-focusBorder': '#f38518',
      '--vscode-contrastBorder': '#6fc3df',
      '--vscode-contrastActiveBorder': '#f38518',
      '--vscode-editorWidget-background': '#0c141f',
      '--vscode-editorWidget-foreground': '#ffffff',
      '--vscode-editorHoverWidget-background': '#0c141f',
      '--vscode-editorHoverWidget-foreground': '#ffffff',
      '--vscode-editorHoverWidget-border': '#6fc3df',
    },
  },
  'high-contrast-light': {
    kind: 'vscode-high-contrast-light',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#ffffff',
      '--vscode-editor-foreground': '#292929',
      '--vscode-focusBorder': '#006bbd',
      '--vscode-contrastBorder': '#0f4a85',
      '--vscode-contrastActiveBorder': '#006bbd',
      '--vscode-editorWidget-background': '#ffffff',
      '--vscode-editorWidget-foreground': '#292929',
      '--vscode-editorHoverWidget-background': '#ffffff',
      '--vscode-editorHoverWidget-foreground': '#292929',
      '--vscode-editorHoverWidget-border': '#0f4a85',
    },
  },
};
