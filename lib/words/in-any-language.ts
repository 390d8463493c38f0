/**
 * The shape of one language's words, without what only that language says: text in place of these
 * texts. A second language is a second object of this type.
 */
export type InAnyLanguage<Words> = Words extends string
  ? string
  : Words extends (...told: infer Told) => infer Said
    ? (...told: Told) => Said extends string ? string : Said
    : Words extends object
      ? { readonly [Key in keyof Words]: InAnyLanguage<Words[Key]> }
      : Words
