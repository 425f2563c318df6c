import type { ThemeRegistration } from 'vitepress';

interface Inks {
  readonly text: string;
  readonly soft: string;
  readonly copper: string;
  readonly verdigris: string;
  readonly blue: string;
}

/** Five inks of the palette on the tint of code: words of the language blue, text verdigris, figures copper. */
function codeTheme(name: string, type: 'light' | 'dark', ground: string, inks: Inks): ThemeRegistration {
  const ink = (foreground: string, ...scope: string[]) => ({ scope, settings: { foreground } });
  return {
    name,
    type,
    colors: { 'editor.background': ground, 'editor.foreground': inks.text },
    settings: [
      { settings: { foreground: inks.text, background: ground } },
      ink(inks.soft, 'comment', 'punctuation.definition.comment'),
      ink(inks.verdigris, 'string', 'punctuation.definition.string', 'string.template', 'markup.inline.raw'),
      ink(inks.copper, 'constant.numeric', 'constant.language', 'constant.other', 'constant.character'),
      ink(inks.blue, 'keyword', 'storage', 'keyword.operator.new', 'keyword.control', 'entity.name.tag'),
      ink(inks.text, 'keyword.operator', 'storage.type.function.arrow', 'variable', 'entity.name', 'support'),
      ink(inks.blue, 'support.type.property-name', 'entity.other.attribute-name'),
      ink(inks.blue, 'entity.name.tag.yaml', 'punctuation.definition.template-expression'),
      { scope: ['markup.heading'], settings: { foreground: inks.text, fontStyle: 'bold' } },
    ],
  };
}

export const light = codeTheme('loom-light', 'light', '#f4efe4', {
  text: '#20251f',
  soft: '#5a6158',
  copper: '#944415',
  verdigris: '#1a6257',
  blue: '#22577a',
});

export const dark = codeTheme('loom-dark', 'dark', '#1f2421', {
  text: '#e9e4d8',
  soft: '#a9afa4',
  copper: '#e39a63',
  verdigris: '#6fc3af',
  blue: '#86b8dd',
});
