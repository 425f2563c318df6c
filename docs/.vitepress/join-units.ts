const UNIT =
  '(?:[kMGmµnp]?(?:Ω|V|A|W|J|F|H|Hz|Pa|Ah|Wh|m|g|s|L)(?:/m|/km|/K)?|mm²|cm²|m²|cm|ft|mil|°C|°F|K|min|h|psi|bar|rpm|AWG|N·m|%|Ω·mm²/m)';
const NUMBER_AND_UNIT = new RegExp(`(\\d) (?=${UNIT}(?![\\wΩ²°]))`, 'g');

/** Between a number and its unit stands a thin space that does not break (U+202F), as the formatter of the house sets. */
export function joinUnits(text: string): string {
  return text.replace(NUMBER_AND_UNIT, '$1\u202f');
}
