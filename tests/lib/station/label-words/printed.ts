/** Ways in which one word is printed on a package. */

/** Each place between two letters at which a word may be broken. */
export const everyBreak = (word: string): readonly string[] =>
  [...word.matchAll(/(?<=\p{L})(?=\p{L})/gu)].map(
    ({ index }) => `${word.slice(0, index)}-\n${word.slice(index)}`,
  )

const brokenOnce = (word: string): string => {
  const breaks = everyBreak(word)
  return breaks[Math.floor(breaks.length / 2)] ?? word
}

const many = (word: string): string =>
  /(?:s|sh|ch|x)$/i.test(word)
    ? word
    : /[^aeiou]y$/i.test(word)
      ? `${word.slice(0, -1)}ies`
      : `${word}s`

export const PRINTED: Readonly<Record<string, (word: string) => string>> = {
  'in capitals': (word) => word.toUpperCase(),
  'with a capital': (word) => word.replace(/(?:^|\s)\S/g, (one) => one.toUpperCase()),
  'as many': many,
  'broken at the end of a line': brokenOnce,
  'in brackets': (word) => `water (${word})`,
  'with a percentage': (word) => `${word} 12.5%`,
  'behind a slash': (word) => `water/${word}`,
  'with spaces that don’t break': (word) => word.replaceAll(' ', '\u00a0'),
  'with soft hyphens': (word) => word.replace(/(\p{L}\p{L})(?=\p{L})/gu, '$1\u00ad'),
}
